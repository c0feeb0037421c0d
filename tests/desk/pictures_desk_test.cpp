// Pictures that come in: laid under a page, attached to somebody.
#include <QTest>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/cast_shelf.h"
#include "desk/underlay_edit.h"
#include "desk_case.h"

using namespace tw;

namespace {

const std::filesystem::path kPicture =
    std::filesystem::path(TIERWRIGHT_SOURCE_DIR) / "demo" / "ines-suit.png";

}  // namespace

class PicturesTest final : public QObject {
  Q_OBJECT

 private slots:
  void aPictureLaidUnderKeepsItsShapeAndUndoTakesItAway();
  void whatIsNoPictureIsRefusedWithASentence();
  void aReferenceIsAttachedOnceAndUndone();
};

void PicturesTest::aPictureLaidUnderKeepsItsShapeAndUndoTakesItAway() {
  DeskCase desk;
  QVERIFY(desk.open());
  const auto original = readFile(kPicture, 16u << 20);
  const auto kept = shelved(desk.folder() / "art", kPicture);
  QVERIFY(layUnder(desk.document(), underPlace(desk.document()), kept));
  const Page& page = desk.document().page();
  QCOMPARE(page.underlays.size(), std::size_t{1});
  QVERIFY(std::filesystem::exists(desk.folder() / "art" / page.underlays[0].file));
  const QImage picture(QString::fromStdString(kPicture.string()));
  const Rect at = page.underlays[0].at;
  QVERIFY(std::abs(at.width() / at.height() -
                   static_cast<double>(picture.width()) / picture.height()) < 1e-3);
  strengthenUnderlay(desk.document(), 0.2);
  strengthenUnderlay(desk.document(), 0.3);
  QCOMPARE(desk.document().undoStack().count(), 2);  // the slider's way is one step
  QVERIFY(desk.act("undo") && desk.act("undo"));
  QVERIFY(desk.document().page().underlays.empty());
  QCOMPARE(*readFile(kPicture, 16u << 20), *original);
}

void PicturesTest::whatIsNoPictureIsRefusedWithASentence() {
  DeskCase desk;
  QVERIFY(desk.open());
  QString told;
  connect(&desk.document(), &Document::troubled, this, [&](const QString& words) { told = words; });
  QVERIFY(!layUnder(desk.document(), underPlace(desk.document()),
                    shelved(desk.folder() / "art", std::filesystem::path(TIERWRIGHT_SOURCE_DIR) /
                                                       "demo" / "the-low-bell.txt")));
  QVERIFY(!told.isEmpty());
  QCOMPARE(desk.document().undoStack().count(), 0);
}

void PicturesTest::aReferenceIsAttachedOnceAndUndone() {
  DeskCase desk;
  QVERIFY(desk.open());
  CastShelf shelf(desk.document());
  const Job before = desk.document().job();
  const std::string who = before.cast.back().id;
  shelf.attach(who, {kPicture});
  QTRY_COMPARE(desk.document().undoStack().count(), 1);
  const std::size_t count = desk.document().job().character(who)->references.size();
  QCOMPARE(count, before.cast.back().references.size() + 1);
  shelf.attach(who, {kPicture, kPicture});
  QTest::qWait(300);
  QCOMPARE(desk.document().job().character(who)->references.size(), count);
  QVERIFY(desk.act("undo"));
  QVERIFY(desk.document().job() == before);
}

QTEST_MAIN(PicturesTest)
#include "pictures_desk_test.moc"

// How a book is made.
//
// A *part* is one drawing that the file stores once: a layer of a page, or a sketch. It becomes a
// form XObject whose space counts points up from the lower left corner of the part's rectangle.
//
// 1. Adding a page draws its layers at once. Shapes become a content stream of our own (small,
//    fast, pure grey); lines of type become one page of a cairo PDF that serves as type case for
//    the whole book, so that each font is embedded once, as a subset, with its way back to text.
// 2. To finish, libqpdf opens that type case, turns its pages into forms (cairo's RGB blacks
//    become grey on the way), makes a form of each part, and builds the real pages: media, bleed
//    and trim box, and one marked `Do` per layer under its optional content group.
// 3. The pages of the type case are dropped; what nothing refers to is not written. Dates are
//    left out and the file's identity is computed from its content.
//
// Cost: linear in the drawing. What it does badly: shapes cannot lie above type within one layer.
// Sources: ISO 32000-1 §7.7.3.3, §8.10, §8.11, §14.11.2.
#define POINTERHOLDER_TRANSITION 4
#include "press/pdf_book.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <map>
#include <mutex>
#include <qpdf/Pl_Flate.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include "press/grey_filter.h"
#include "press/pdf_surface.h"

namespace tw {

namespace {

using Object = QPDFObjectHandle;

constexpr double kPtPerMm = 72 / 25.4;

struct Part {
  Rect rect;
  std::string content;
  int typePage = -1;  ///< in the type case; −1: no type
  std::vector<int> sketches;
};

struct PageRecord {
  PdfPage page;  ///< layers without their drawing functions
  std::vector<Part> layers;
};

cairo_status_t append(void* out, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(out)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

/// All type of a book, one cairo page per part.
class TypeCase {
 public:
  explicit TypeCase(const Typesetter& typesetter)
      : typesetter_(typesetter),
        surface_(cairo_pdf_surface_create_for_stream(append, &bytes_, 72, 72)),
        cairo_(cairo_create(surface_)) {}
  ~TypeCase() {
    cairo_destroy(cairo_);
    cairo_surface_destroy(surface_);
  }
  TypeCase(const TypeCase&) = delete;
  TypeCase& operator=(const TypeCase&) = delete;

  /// The new page's number, or −1 when there is nothing to set.
  int set(const std::vector<TypeLine>& lines, const Rect& rect) {
    if (lines.empty()) return -1;
    cairo_pdf_surface_set_size(surface_, rect.width() * kPtPerMm, rect.height() * kPtPerMm);
    cairo_save(cairo_);
    cairo_scale(cairo_, kPtPerMm, kPtPerMm);
    cairo_translate(cairo_, -rect.min.x, -rect.min.y);
    for (const TypeLine& line : lines) typesetter_.draw(cairo_, line);
    cairo_restore(cairo_);
    cairo_show_page(cairo_);
    return pages_++;
  }

  Result<std::string> finished() {
    cairo_surface_finish(surface_);
    const cairo_status_t status = cairo_surface_status(surface_);
    if (status != CAIRO_STATUS_SUCCESS)
      return ourFault(std::string("The type could not be set: ") + cairo_status_to_string(status) +
                      ".");
    return bytes_;
  }

 private:
  const Typesetter& typesetter_;
  std::string bytes_;
  cairo_surface_t* surface_;
  cairo_t* cairo_;
  int pages_ = 0;
};

Object box(const Rect& rect, const Rect& media) {
  const auto pt = [](double mm) { return Object::newReal(pdfNumber(mm * kPtPerMm)); };
  return Object::newArray({pt(rect.min.x - media.min.x), pt(media.max.y - rect.max.y),
                           pt(rect.max.x - media.min.x), pt(media.max.y - rect.min.y)});
}

/// From steps of 1/100 mm, y down, to the points of the part's rectangle, y up.
std::string stepsToPoints(const Rect& rect) {
  const double scale = kPtPerMm / kPdfStepsPerMm;
  return fmt::format("q {:.9f} 0 0 {:.9f} {} {} cm\n", scale, -scale,
                     pdfNumber(-rect.min.x * kPtPerMm), pdfNumber(rect.max.y * kPtPerMm));
}

/// Builds the final document inside the opened type case.
class Binder {
 public:
  Binder(QPDF& pdf, std::string title) : pdf_(pdf), title_(std::move(title)) {}

  void bind(const std::vector<Part>& sketches, const std::vector<PageRecord>& pages) {
    takeTypePages();
    for (const Part& sketch : sketches) sketches_.push_back(form(sketch));
    for (const PageRecord& page : pages) addPage(page);
    addBookmarks(pages);
    addLayerList();
    addInfo();
  }

 private:
  void takeTypePages() {
    QPDFPageDocumentHelper helper(pdf_);
    for (QPDFPageObjectHelper& page : helper.getAllPages()) {
      Object dict = Object::newDictionary();
      dict.replaceKey("/Type", Object::newName("/XObject"));
      dict.replaceKey("/Subtype", Object::newName("/Form"));
      dict.replaceKey("/BBox", page.getMediaBox());
      dict.replaceKey("/Resources", page.getAttribute("/Resources", true));
      GreyFilter grey;
      std::string content = filteredContent(page, grey);
      Object stream = pdf_.newStream(content);
      stream.replaceDict(dict);
      typeForms_.push_back(stream);
      helper.removePage(page);
    }
  }

  Object form(const Part& part) {
    Object objects = Object::newDictionary();
    for (const int sketch : part.sketches)
      objects.replaceKey(fmt::format("/S{}", sketch),
                         sketches_.at(static_cast<std::size_t>(sketch)));
    std::string content = stepsToPoints(part.rect) + part.content + "Q\n";
    if (part.typePage >= 0) {
      objects.replaceKey("/Type0", typeForms_.at(static_cast<std::size_t>(part.typePage)));
      content += "/Type0 Do\n";
    }
    Object resources = Object::newDictionary();
    resources.replaceKey("/XObject", objects);
    Object stream = pdf_.newStream(content);
    Object dict = stream.getDict();
    dict.replaceKey("/Type", Object::newName("/XObject"));
    dict.replaceKey("/Subtype", Object::newName("/Form"));
    dict.replaceKey("/BBox", box(part.rect, part.rect));
    dict.replaceKey("/Resources", resources);
    return stream;
  }

  /// The optional content group of that title, one for the whole book.
  Object group(const PdfLayer& layer) {
    for (auto& [title, object] : groups_)
      if (title == layer.title) return object;
    Object object = pdf_.makeIndirectObject(Object::newDictionary());
    object.replaceKey("/Type", Object::newName("/OCG"));
    object.replaceKey("/Name", Object::newUnicodeString(layer.title));
    groups_.emplace_back(layer.title, object);
    (layer.shown ? on_ : off_).appendItem(object);
    return object;
  }

  void addPage(const PageRecord& record) {
    Object objects = Object::newDictionary();
    Object properties = Object::newDictionary();
    std::string content;
    for (std::size_t i = 0; i < record.layers.size(); ++i) {
      const PdfLayer& layer = record.page.layers[i];
      const std::string name = fmt::format("/L{}", i);
      objects.replaceKey(name, form(record.layers[i]));
      if (layer.title.empty()) {
        content += name + " Do\n";
        continue;
      }
      properties.replaceKey(name, group(layer));
      content += fmt::format("/OC {} BDC {} Do EMC\n", name, name);
    }
    Object resources = Object::newDictionary();
    resources.replaceKey("/XObject", objects);
    resources.replaceKey("/Properties", properties);
    Object page = pdf_.makeIndirectObject(Object::newDictionary());
    page.replaceKey("/Type", Object::newName("/Page"));
    page.replaceKey("/MediaBox", box(record.page.media, record.page.media));
    page.replaceKey("/BleedBox", box(record.page.bleed, record.page.media));
    page.replaceKey("/TrimBox", box(record.page.trim, record.page.media));
    page.replaceKey("/Resources", resources);
    page.replaceKey("/Contents", pdf_.newStream(content));
    pages_.push_back(page);
    QPDFPageDocumentHelper(pdf_).addPage(QPDFPageObjectHelper(page), false);
  }

  Object bookmark(const std::string& title, Object page, Object parent) {
    Object item = pdf_.makeIndirectObject(Object::newDictionary());
    item.replaceKey("/Title", Object::newUnicodeString(title));
    item.replaceKey("/Parent", parent);
    item.replaceKey("/Dest", Object::newArray({page, Object::newName("/Fit")}));
    if (parent.hasKey("/Last")) {
      item.replaceKey("/Prev", parent.getKey("/Last"));
      parent.getKey("/Last").replaceKey("/Next", item);
    } else {
      parent.replaceKey("/First", item);
    }
    parent.replaceKey("/Last", item);
    const long long count = parent.hasKey("/Count") ? parent.getKey("/Count").getIntValue() : 0;
    // A negative count keeps the item closed when the file opens.
    const bool isRoot = !parent.hasKey("/Title");
    parent.replaceKey("/Count", Object::newInteger(isRoot ? count + 1 : count - 1));
    return item;
  }

  void addBookmarks(const std::vector<PageRecord>& pages) {
    Object root = pdf_.makeIndirectObject(Object::newDictionary());
    root.replaceKey("/Type", Object::newName("/Outlines"));
    Object chapter = root;
    for (std::size_t i = 0; i < pages.size(); ++i) {
      const PdfPage& page = pages[i].page;
      if (page.bookmark.empty()) continue;
      Object item = bookmark(page.bookmark, pages_[i], page.depth == 0 ? root : chapter);
      if (page.depth == 0) chapter = item;
    }
    if (root.hasKey("/First")) pdf_.getRoot().replaceKey("/Outlines", root);
  }

  void addLayerList() {
    if (groups_.empty()) return;
    Object all = Object::newArray(), order = Object::newArray();
    for (auto& [title, object] : groups_) {
      all.appendItem(object);
      order.appendItem(object);
    }
    Object standard = Object::newDictionary();
    standard.replaceKey("/Name", Object::newUnicodeString("Rough and overlays"));
    standard.replaceKey("/Order", order);
    standard.replaceKey("/ON", on_);
    standard.replaceKey("/OFF", off_);
    Object properties = Object::newDictionary();
    properties.replaceKey("/OCGs", all);
    properties.replaceKey("/D", standard);
    pdf_.getRoot().replaceKey("/OCProperties", properties);
  }

  void addInfo() {
    Object info = pdf_.makeIndirectObject(Object::newDictionary());
    info.replaceKey("/Title", Object::newUnicodeString(title_));
    info.replaceKey("/Creator", Object::newString("Tierwright"));
    info.replaceKey("/Producer", Object::newString("Tierwright"));
    pdf_.getTrailer().replaceKey("/Info", info);
    Object viewer = Object::newDictionary();
    viewer.replaceKey("/DisplayDocTitle", Object::newBool(true));
    pdf_.getRoot().replaceKey("/ViewerPreferences", viewer);
  }

  QPDF& pdf_;
  std::string title_;
  std::vector<Object> typeForms_, sketches_, pages_;
  std::vector<std::pair<std::string, Object>> groups_;
  Object on_ = Object::newArray(), off_ = Object::newArray();
};

// Outlines are digits in no order: searching longer for repeats (zlib's level 6) takes four times
// as long and saves a tenth.
constexpr int kDeflateLevel = 2;

std::string written(QPDF& pdf) {
  // libqpdf keeps the level for the whole process, without a lock of its own.
  static std::once_flag once;
  std::call_once(once, [] { Pl_Flate::setCompressionLevel(kDeflateLevel); });
  QPDFWriter writer(pdf);
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setMinimumPDFVersion("1.5");
  writer.setObjectStreamMode(qpdf_o_generate);
  writer.setCompressStreams(true);
  writer.write();
  const std::shared_ptr<Buffer> buffer = writer.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace

struct PdfBook::Impl {
  std::string title;
  TypeCase typeCase;
  std::map<const Sketch*, int> numbers;  // looked up only; its order never reaches the file
  std::vector<Part> sketches;
  std::vector<PageRecord> pages;

  Impl(const Typesetter& typesetter, std::string bookTitle)
      : title(std::move(bookTitle)), typeCase(typesetter) {}

  int numberOf(const Sketch& sketch) {
    const auto known = numbers.find(&sketch);
    if (known != numbers.end()) return known->second;
    Part part =
        drawn(sketch.bounds(), [&](Surface& surface) { sketch.drawOn(surface, kFinestMm); });
    const int number = static_cast<int>(sketches.size());
    sketches.push_back(std::move(part));
    numbers[&sketch] = number;
    return number;
  }

  Part drawn(const Rect& rect, const std::function<void(Surface&)>& draw) {
    PdfSurface surface([this](const Sketch& sketch) { return numberOf(sketch); });
    draw(surface);
    return {rect, surface.content(), typeCase.set(surface.lines(), rect), surface.sketches()};
  }
};

PdfBook::PdfBook(const Typesetter& typesetter, std::string title)
    : impl_(std::make_unique<Impl>(typesetter, std::move(title))) {}
PdfBook::~PdfBook() = default;

void PdfBook::add(const PdfPage& page) {
  PageRecord record{page, {}};
  for (PdfLayer& layer : record.page.layers) {
    record.layers.push_back(impl_->drawn(page.media, layer.draw));
    layer.draw = nullptr;
  }
  impl_->pages.push_back(std::move(record));
}

Result<std::string> PdfBook::finished() {
  Result<std::string> typeCase = impl_->typeCase.finished();
  if (!typeCase) return tl::unexpected(typeCase.error());
  try {
    QPDF pdf;
    pdf.processMemoryFile("type case", typeCase->data(), typeCase->size());
    Binder(pdf, impl_->title).bind(impl_->sketches, impl_->pages);
    return written(pdf);
  } catch (const std::exception& error) {
    return ourFault(std::string("The PDF could not be put together: ") + error.what());
  }
}

}  // namespace tw

// What a page is called.
#pragma once

#include <QCoreApplication>
#include <QString>

#include "job/job.h"

namespace tw {

/// "page 4", "pages 2–3".
inline QString inWords(const Page& page) {
  return page.spread ? QCoreApplication::translate("Page", "pages %1–%2")
                           .arg(page.number)
                           .arg(page.number + 1)
                     : QCoreApplication::translate("Page", "page %1").arg(page.number);
}
/// "4", "2–3".
inline QString numbersOf(const Page& page) {
  return page.spread ? QStringLiteral("%1–%2").arg(page.number).arg(page.number + 1)
                     : QString::number(page.number);
}

}  // namespace tw

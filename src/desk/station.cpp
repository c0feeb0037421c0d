#include "desk/station.h"

namespace tw {

Station::Station(Document& document, Engine& engine, QWidget* parent)
    : QWidget(parent), document_(document), engine_(engine) {}

}  // namespace tw

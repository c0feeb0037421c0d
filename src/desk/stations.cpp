#include "desk/stations.h"

#include "desk/board_station.h"

namespace tw {

std::vector<Station*> makeStations(Document& document, Engine& engine, QWidget* parent) {
  return {new BoardStation(document, engine, parent)};
}

}  // namespace tw

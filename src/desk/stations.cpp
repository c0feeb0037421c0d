#include "desk/stations.h"

#include "desk/board_station.h"
#include "desk/copy_station.h"
#include "desk/roughs_station.h"
#include "desk/script_station.h"
#include "desk/staging_station.h"

namespace tw {

std::vector<Station*> makeStations(Document& document, Engine& engine, QWidget* parent) {
  return {new ScriptStation(document, engine, parent), new RoughsStation(document, engine, parent),
          new StagingStation(document, engine, parent), new CopyStation(document, engine, parent),
          new BoardStation(document, engine, parent)};
}

}  // namespace tw

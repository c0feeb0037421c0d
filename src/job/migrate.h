// Brings files of older format versions up to the current one, before they are read. Files on disk
// stay as they are until the job is saved.
#pragma once

#include "job/parse_json.h"

namespace tw {

enum class DocumentKind { Job, Page };

/// Rewrites the tree from format `from` to kFormat. Things that do not look as that format wrote
/// them are left alone; the reader then names them.
void migrate(Json& tree, DocumentKind kind, int from);

}  // namespace tw

#include "review/called.h"

#include <cctype>

namespace tw {

std::string calledIn(const Job& job, const std::string& id) {
  const Character* who = job.character(id);
  if (who == nullptr || who->name.empty()) return id;
  std::string name = who->name;
  bool first = true;  // the script's capitals become a name as one writes it
  for (char& c : name) {
    if (!first) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    first = c == ' ' || c == '-';
  }
  return name;
}

}  // namespace tw

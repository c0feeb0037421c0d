// The models of a job: surfaces read from its files, by name, and which prop is drawn with which.
// Reading the files is for command to do; here nothing touches the disk.
#pragma once

#include <map>
#include <string>

#include "stage/figure.h"

namespace tw {

/// By the file's name without ".obj", lower case. As readObj gives them: metres, y up.
using Models = std::map<std::string, Mesh>;

/// The name of the model that draws the prop, or empty: the one it names, else the one called as
/// its id or its name is (blanks as hyphens).
template <class Map>
std::string modelNameFor(const Prop& prop, const Map& models);

/// The model upright, scaled to the prop's declared height, its middle over the origin. It stands
/// on y = 0; what floats keeps the file's y = 0 as its waterline.
Mesh modelMesh(const Mesh& model, const Prop& prop, bool floats);

/// The beat with the sizes of its props as their models have them.
Beat sizedByModels(Beat beat, const Models& models);
/// Some prop of the beat is drawn with a model.
bool hasModel(const Beat& beat, const Models& models);

std::string modelNameOf(const std::string& name);  ///< lower case, blanks as hyphens

template <class Map>
std::string modelNameFor(const Prop& prop, const Map& models) {
  if (!prop.model.empty()) {
    const std::string named = modelNameOf(prop.model);
    return models.contains(named) ? named : std::string();
  }
  for (const std::string& name : {modelNameOf(prop.id), modelNameOf(prop.name)})
    if (models.contains(name)) return name;
  return {};
}

}  // namespace tw

// Sizes, parts and step records as JSON, with texts in the notation of the project. Private to
// core/sheets.
//
// Apart from planjson.h, which says what surrounds them: a new kind of step is described here and
// nowhere else.
#pragma once

#include "core/glueup/steps.h"
#include "core/project/project.h"

#include <nlohmann/json.hpp>

namespace kerfwright {

class RecordJson {
public:
    using Json = nlohmann::ordered_json;

    /// The project must outlive it.
    explicit RecordJson(const Project& project)
        : project_(project) {}

    Json length(Length value) const;
    Json figure(const Figure& value) const;
    Json area(Area value) const;
    Json volume(Volume value) const;
    /// The key of a wood; null where there is none.
    Json wood(int index) const;
    static Json lay(const Lay& how);
    Json joints(const std::vector<Joint>& list) const;
    /// `number` counts from 1.
    Json step(const Step& one, int number) const;

private:
    const Project& project_;
};

const char* fileKey(BorderDesign design);

}  // namespace kerfwright

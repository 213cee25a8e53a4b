// A language that is spoken until the end of a scope.
#pragma once

#include "core/words/catalogue.h"
#include "tests/core/words/catalogue.h"

#include <memory>

namespace kerfwright {

class Spoken {
public:
    explicit Spoken(const Entries& entries) {
        speak(std::make_shared<const Catalogue>(Catalogue::read(machineForm(entries)).value()));
    }
    Spoken(const Spoken&) = delete;
    Spoken& operator=(const Spoken&) = delete;
    ~Spoken() { speak(nullptr); }
};

}  // namespace kerfwright

// The sentences of a language, as translators keep them: in the machine form (.mo) that msgfmt
// makes of a text file (.po). The form is described in the manual of GNU gettext, "The Format of
// GNU MO Files".
#pragma once

#include "core/words/plurals.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kerfwright {

class Catalogue {
public:
    /// Nothing where the bytes are no such file, are cut short, or have a rule for plurals that
    /// cannot be read.
    static std::optional<Catalogue> read(std::string_view bytes);

    /// Empty where there is no translation. An empty context is none.
    std::string_view find(std::string_view context, std::string_view text) const;
    /// The form for `count`; `one` is the English for 1.
    std::string_view find(std::string_view one, long long count) const;
    std::size_t size() const { return forms_.size(); }

private:
    std::map<std::string, std::vector<std::string>, std::less<>> forms_;
    Plurals plurals_;
};

/// From now on `say` uses this language, English where it is null. The one thing that is shared by
/// the whole program: set it before any other thread says anything, and leave it.
void speak(std::shared_ptr<const Catalogue> language);
/// Null for English.
const Catalogue* spoken();

}  // namespace kerfwright

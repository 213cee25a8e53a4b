#include "tests/source.h"

namespace kerfwright {

std::filesystem::path sourceFolder() {
    return KW_SOURCE_DIR;
}

}  // namespace kerfwright

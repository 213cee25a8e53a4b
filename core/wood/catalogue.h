// The bytes of resources/woods.json. Private to core/wood.
#pragma once

#include <string_view>

namespace kerfwright::detail {

std::string_view catalogueJson();

}  // namespace kerfwright::detail

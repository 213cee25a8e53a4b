// What nearly every test includes; read once for all of them where KERFWRIGHT_PCH is on. Files name
// what they need all the same: builds without it are the rule.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <variant>
#include <vector>

// Nothing to compile: it is here for what is precompiled with it.
#include "tests/precompiled.h"

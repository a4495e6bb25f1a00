#include "markup/helpers.hpp"

#include "ui/window/figurenotice.h"

namespace kerfwright {

FigureNotice& FigureNotice::instance() {
    static FigureNotice notice;
    return notice;
}

}  // namespace kerfwright

#include "ui/document/habits.h"

namespace kerfwright {

Unit usualUnit(const QLocale& locale) {
    return locale.measurementSystem() == QLocale::ImperialUSSystem ? Unit::Inches
                                                                   : Unit::Millimetres;
}

Paper usualPaper(const QLocale& locale) {
    switch (locale.territory()) {
    case QLocale::Belize:
    case QLocale::Canada:
    case QLocale::Chile:
    case QLocale::Colombia:
    case QLocale::CostaRica:
    case QLocale::ElSalvador:
    case QLocale::Guatemala:
    case QLocale::Mexico:
    case QLocale::Nicaragua:
    case QLocale::Panama:
    case QLocale::Philippines:
    case QLocale::PuertoRico:
    case QLocale::UnitedStates:
    case QLocale::Venezuela:
        return Paper::Letter;
    default:
        return Paper::A4;
    }
}

}  // namespace kerfwright

#include "ui/window/amounts.h"

#include "core/measure/number.h"
#include "ui/document/text.h"

#include <QCoreApplication>

#include <cmath>

namespace kerfwright {

namespace {

class Amounts {
    Q_DECLARE_TR_FUNCTIONS(Amounts)

public:
    static QString weight(double kilograms, Unit unit) {
        if (unit == Unit::Inches) {
            return tr("≈ %1 lb").arg(toQt(formatFixed(kilograms / 0.45359237, 1)));
        }
        return tr("≈ %1 kg").arg(toQt(formatFixed(kilograms, 1)));
    }

    static QString range(const Range& mm, Unit unit, bool withSign) {
        const bool inches = unit == Unit::Inches;
        const double scale = inches ? 25.4 : 1;
        const int decimals = inches ? 2 : 1;
        const double fine = inches ? 100 : 10;
        const auto part = [&](double value) {
            const double shown = std::round(std::abs(value) / scale * fine) / fine;
            const QString text = toQt(formatFixed(shown, decimals));
            if (shown == 0) {
                return withSign ? QStringLiteral("±0") : QStringLiteral("0");
            }
            return value < 0  ? QStringLiteral("−") + text
                   : withSign ? QStringLiteral("+") + text
                              : text;
        };
        const QString least = part(mm.least);
        const QString greatest = part(mm.greatest);
        const QString both = least == greatest ? least : tr("%1 to %2").arg(least, greatest);
        return both + (inches ? tr(" in") : tr(" mm"));
    }
};

}  // namespace

QString weightText(double kilograms, Unit unit) {
    return Amounts::weight(kilograms, unit);
}

QString changeText(const Range& mm, Unit unit) {
    return Amounts::range(mm, unit, true);
}

QString gapText(const Range& mm, Unit unit) {
    return Amounts::range(mm, unit, false);
}

}  // namespace kerfwright

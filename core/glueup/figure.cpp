#include "core/glueup/figure.h"

#include "core/words/say.h"

namespace kerfwright {

Figure::Figure(std::initializer_list<Term> list) {
    terms.reserve(list.size());
    for (const Term& term : list) {
        add(term.kind, term.value, term.times);
    }
}

Figure& Figure::add(TermKind kind, Length length, int times) {
    if (length == Length() || times == 0) {
        return *this;
    }
    terms.push_back({kind, length, times});
    value += length * times;
    return *this;
}

Figure& Figure::roundUp(Length step) {
    return add(TermKind::RoundingUp, roundedUp(value, step) - value);
}

Length Figure::sumOfTerms() const {
    Length sum;
    for (const Term& term : terms) {
        sum += term.value * term.times;
    }
    return sum;
}

std::string termName(TermKind kind) {
    switch (kind) {
    case TermKind::PieceWidth:
        return sayIn("working", "piece");
    case TermKind::RowHeight:
        return sayIn("working", "row");
    case TermKind::BoardThickness:
        return sayIn("working", "board thickness");
    case TermKind::BorderWidth:
        return sayIn("working", "border");
    case TermKind::FieldSide:
        return sayIn("working", "field");
    case TermKind::TrimMargin:
        return sayIn("working", "trim margin");
    case TermKind::PanelFlattening:
        return sayIn("working", "flattening the panel");
    case TermKind::HalfPanelFlattening:
        return sayIn("working", "half of flattening the panel");
    case TermKind::FieldFlattening:
        return sayIn("working", "flattening the field");
    case TermKind::Truing:
        return sayIn("working", "truing");
    case TermKind::Stick:
        return sayIn("working", "pieces together");
    case TermKind::Milling:
        return sayIn("working", "milling");
    case TermKind::EndAllowance:
        return sayIn("working", "end allowance");
    case TermKind::SquaringCut:
        return sayIn("working", "squaring cut");
    case TermKind::Kerf:
        return sayIn("working", "kerf");
    case TermKind::Slices:
        return sayIn("working", "slices");
    case TermKind::SpareSlices:
        return sayIn("working", "spare slices");
    case TermKind::Tail:
        return sayIn("working", "tail");
    case TermKind::RoundingUp:
    case TermKind::RoundingFine:
        return sayIn("working", "rounded up");
    case TermKind::HalfGrowth:
        return sayIn("working", "half of the field’s growth");
    case TermKind::HalfShrinkage:
        return sayIn("working", "half of the field’s shrinkage");
    case TermKind::PinGrowth:
        return sayIn("working", "growth at the pin");
    case TermKind::PinShrinkage:
        return sayIn("working", "shrinkage at the pin");
    case TermKind::Clearance:
        return sayIn("working", "clearance");
    case TermKind::OwnGap:
        return sayIn("working", "gap as wished");
    case TermKind::Gap:
        return sayIn("working", "gap");
    case TermKind::Hold:
        return sayIn("working", "hold");
    case TermKind::RailGroove:
        return sayIn("working", "groove in the rail");
    case TermKind::FieldGroove:
        return sayIn("working", "groove in the field");
    case TermKind::Ledge:
        return sayIn("working", "ledge");
    case TermKind::TongueReach:
        return sayIn("working", "tongue");
    case TermKind::Joinery:
        return sayIn("working", "usual size");
    case TermKind::Inlay:
        return sayIn("working", "inlay");
    case TermKind::Proud:
        return sayIn("working", "to level");
    case TermKind::PinRadius:
        return sayIn("working", "half of the pin");
    }
    return {};
}

Setting settingOf(TermKind kind) {
    switch (kind) {
    case TermKind::TrimMargin:
        return Setting::TrimMargin;
    case TermKind::PanelFlattening:
    case TermKind::HalfPanelFlattening:
        return Setting::PanelFlattening;
    case TermKind::Truing:
        return Setting::Truing;
    case TermKind::FieldFlattening:
        return Setting::FieldFlattening;
    case TermKind::Milling:
        return Setting::Milling;
    case TermKind::EndAllowance:
        return Setting::EndAllowance;
    case TermKind::SquaringCut:
        return Setting::SquaringCut;
    case TermKind::Kerf:
        return Setting::Kerf;
    case TermKind::Tail:
        return Setting::Tail;
    case TermKind::RoundingUp:
        return Setting::LengthStep;
    case TermKind::PieceWidth:
    case TermKind::RowHeight:
    case TermKind::BoardThickness:
    case TermKind::BorderWidth:
    case TermKind::FieldSide:
    case TermKind::Stick:
    case TermKind::Slices:
    case TermKind::SpareSlices:
    case TermKind::HalfGrowth:
    case TermKind::HalfShrinkage:
    case TermKind::PinGrowth:
    case TermKind::PinShrinkage:
    case TermKind::Clearance:
    case TermKind::OwnGap:
    case TermKind::Gap:
    case TermKind::Hold:
    case TermKind::RailGroove:
    case TermKind::FieldGroove:
    case TermKind::Ledge:
    case TermKind::TongueReach:
    case TermKind::Joinery:
    case TermKind::Inlay:
    case TermKind::Proud:
    case TermKind::PinRadius:
    case TermKind::RoundingFine:
        break;
    }
    return Setting::None;
}

std::string working(const Figure& figure, const Notation& notation) {
    std::string text;
    for (const Term& term : figure.terms) {
        if (term.kind == TermKind::RoundingFine && write(term.value, notation).rounded) {
            text =
                sayIn("working", "{1}, rounded up", text);  // by less than this notation can write
            continue;
        }
        const bool less = term.times < 0;
        if (!text.empty()) {
            text += less ? " − " : " + ";
        } else if (less) {
            text += "−";
        }
        if (const int times = less ? -term.times : term.times; times != 1) {
            text += std::to_string(times) + " × ";
        }
        text += format(term.value, notation) + " " + termName(term.kind);
    }
    // A rounded sum brings its own sign.
    const Written sum = write(figure.value, notation);
    return text + (sum.rounded ? " " : " = ") + sum.text;
}

}  // namespace kerfwright

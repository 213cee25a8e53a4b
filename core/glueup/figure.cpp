#include "core/glueup/figure.h"

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

const char* termName(TermKind kind) {
    switch (kind) {
    case TermKind::PieceWidth:
        return "piece";
    case TermKind::RowHeight:
        return "row";
    case TermKind::BoardThickness:
        return "board thickness";
    case TermKind::BorderWidth:
        return "border";
    case TermKind::FieldSide:
        return "field";
    case TermKind::TrimMargin:
        return "trim margin";
    case TermKind::PanelFlattening:
        return "flattening the panel";
    case TermKind::FieldFlattening:
        return "flattening the field";
    case TermKind::Milling:
        return "milling";
    case TermKind::EndAllowance:
        return "end allowance";
    case TermKind::SquaringCut:
        return "squaring cut";
    case TermKind::Kerf:
        return "kerf";
    case TermKind::Slices:
        return "slices";
    case TermKind::SpareSlices:
        return "spare slices";
    case TermKind::Tail:
        return "tail";
    case TermKind::RoundingUp:
        return "rounded up";
    }
    return "";
}

Setting settingOf(TermKind kind) {
    switch (kind) {
    case TermKind::TrimMargin:
        return Setting::TrimMargin;
    case TermKind::PanelFlattening:
        return Setting::PanelFlattening;
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
    case TermKind::Slices:
    case TermKind::SpareSlices:
        break;
    }
    return Setting::None;
}

std::string working(const Figure& figure, const Notation& notation) {
    std::string text;
    for (const Term& term : figure.terms) {
        if (!text.empty()) {
            text += " + ";
        }
        if (term.times != 1) {
            text += std::to_string(term.times) + " × ";
        }
        text += format(term.value, notation) + " " + termName(term.kind);
    }
    // A rounded sum brings its own sign.
    const Written sum = write(figure.value, notation);
    return text + (sum.rounded ? " " : " = ") + sum.text;
}

}  // namespace kerfwright

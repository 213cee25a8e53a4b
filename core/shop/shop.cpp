#include "core/shop/shop.h"

#include "core/words/say.h"

#include <algorithm>
#include <string>

namespace kerfwright {
namespace {

constexpr int mostSpareSlices = 20;

}  // namespace

Shop metricShop() {
    Shop shop;
    // A full saw blade, 1/8 in = 3.18 mm; blades are sold as 3.2 mm (value from memory). Source of
    // the inch value: a maker's table of table saw blades (trade press).
    shop.kerf = Length::um(3200);
    // Common practice, no source: 1.5 mm a face takes out the steps between well glued parts. A
    // published planing allowance is 3 mm a face for sawn timber, which glued stock is not.
    shop.fieldFlattening = Length::mm(3);
    shop.panelFlattening = Length::mm(3);
    shop.trimMargin = Length::mm(3);  // common practice, no source
    // Common practice, no source: a jointed edge, and a ripped one.
    shop.truing = Length::mm(3);
    shop.squaringCut = Length::mm(10);  // common practice, no source
    shop.tail = Length::mm(10);         // common practice, no source
    shop.milling = Length::mm(3);       // common practice, no source
    shop.endAllowance = Length();       // the rounding up of lengths usually covers it
    shop.lengthStep = Length::mm(10);   // common practice, no source
    shop.spareSlices = 1;               // common practice, no source
    // One maker keeps every panel under the 12 1/2 in of a common bench planer (a maker's account
    // of a board); the shortest piece is the 300 mm of the UK regulator's advice on planing
    // machines.
    shop.planerWidth = Length::mm(317);
    shop.planerShortest = Length::mm(300);
    // A drum sander's manual: 22 in in a single pass (558.8 mm, taken as 560), and no workpiece
    // shorter than 2 3/8 in (60 mm).
    shop.sanderWidth = Length::mm(560);
    shop.sanderShortest = Length::mm(60);
    shop.sawDepth = Length::mm(75);    // a 10 in (254 mm) table saw; value from memory
    shop.leastHeld = Length::mm(150);  // common practice, no source
    shop.longestStrip =
        Length::mm(2400);                 // value from memory: timber is often sold in such lengths
    shop.sliceShortest = Length::mm(10);  // common practice, no source
    return shop;
}

Shop inchShop() {
    Shop shop;
    shop.kerf = Length::inch(1, 8);             // a maker's table of table saw blades: full kerf
    shop.fieldFlattening = Length::inch(1, 8);  // common practice, no source
    shop.panelFlattening = Length::inch(1, 8);  // common practice, no source
    shop.trimMargin = Length::inch(1, 8);       // common practice, no source
    shop.truing = Length::inch(1, 8);           // common practice, no source
    shop.squaringCut = Length::inch(1, 2);      // common practice, no source
    shop.tail = Length::inch(1, 2);             // common practice, no source
    shop.milling = Length::inch(1, 8);          // common practice, no source
    shop.endAllowance = Length();               // as in the metric shop
    shop.lengthStep = Length::inch(1);          // common practice, no source
    shop.spareSlices = 1;                       // common practice, no source
    shop.planerWidth = Length::inch(25, 2);     // as in the metric shop
    shop.planerShortest = Length::inch(12);     // the "12 in rule" of workshop safety courses
    shop.sanderWidth = Length::inch(22);        // a drum sander's manual: single pass
    shop.sanderShortest = Length::inch(19, 8);  // the same manual: 2 3/8 in
    shop.sawDepth = Length::inch(25, 8);        // 3 1/8 in, a 10 in table saw; value from memory
    shop.leastHeld = Length::inch(6);           // common practice, no source
    shop.longestStrip = Length::inch(96);       // 8 ft timber; value from memory
    shop.sliceShortest = Length::inch(3, 8);    // common practice, no source
    return shop;
}

// The limits stop slips of the key, not wishes: they are wider than any machine that one person
// has. No source; the project's own judgement.
const std::vector<SettingInfo>& shopSettings() {
    static const std::vector<SettingInfo> settings{
        {Setting::Kerf, "kerf", noted("Kerf"),
         noted("Width of the cut that the saw blade makes, measured in wood."), &Shop::kerf,
         Length::um(100), Length::mm(12)},
        {Setting::FieldFlattening, "field-flattening", noted("Field flattening"),
         noted("Taken off the board's thickness after the final glue-up, both faces together."),
         &Shop::fieldFlattening, Length(), Length::mm(25)},
        {Setting::PanelFlattening, "panel-flattening", noted("Panel flattening"),
         noted("Taken off a panel's thickness after its glue-up, both faces together."),
         &Shop::panelFlattening, Length(), Length::mm(25)},
        {Setting::TrimMargin, "trim-margin", noted("Trim margin"),
         noted("Extra width on each side of the field, sawn off after the final glue-up."),
         &Shop::trimMargin, Length(), Length::mm(50)},
        {Setting::Truing, "truing", noted("Truing allowance"),
         noted("Taken off each side of a panel that goes into another glue-up, to make it straight "
               "and square."),
         &Shop::truing, Length(), Length::mm(25)},
        {Setting::SquaringCut, "squaring-cut", noted("Squaring cut"),
         noted("Cut off the end of a panel to square it before the first slice; 0 for none."),
         &Shop::squaringCut, Length(), Length::mm(200)},
        {Setting::Tail, "tail", noted("Tail"),
         noted("Left of the panel after the last slice, to hold on to."), &Shop::tail, Length(),
         Length::mm(500)},
        {Setting::Milling, "milling", noted("Milling allowance"),
         noted("Added to the thickness and to the width of a strip for milling it from rough "
               "timber."),
         &Shop::milling, Length(), Length::mm(50)},
        {Setting::EndAllowance, "end-allowance", noted("End allowance"),
         noted("Extra rough length of a strip, sawn off when it is milled."), &Shop::endAllowance,
         Length(), Length::mm(500)},
        {Setting::LengthStep, "length-step", noted("Length step"),
         noted("Strip lengths are rounded up to a multiple of this."), &Shop::lengthStep,
         Length::um(100), Length::mm(1000)},
        {Setting::PlanerWidth, "planer-width", noted("Planer width"),
         noted("Widest panel that your thickness planer takes; wider ones go to the sander."),
         &Shop::planerWidth, Length(), Length::mm(10'000)},
        {Setting::PlanerShortest, "planer-shortest", noted("Shortest to plane or rip"),
         noted("Shortest piece that goes through planer, jointer or along the rip fence; see the "
               "manuals."),
         &Shop::planerShortest, Length(), Length::mm(2000)},
        {Setting::SanderWidth, "sander-width", noted("Sander width"),
         noted("Widest panel or field that can be flattened."), &Shop::sanderWidth, Length::mm(50),
         Length::mm(10'000)},
        {Setting::SanderShortest, "sander-shortest", noted("Shortest at the sander"),
         noted("Shortest workpiece that the flattening machine takes; see its manual."),
         &Shop::sanderShortest, Length(), Length::mm(2000)},
        {Setting::SawDepth, "saw-depth", noted("Depth of cut"),
         noted("Thickest panel that the saw cuts through."), &Shop::sawDepth, Length::mm(5),
         Length::mm(1000)},
        {Setting::LeastHeld, "least-held", noted("Least held length"),
         noted("Shortest workpiece that is safe to hold at the saw; below it, the steps ask for a "
               "sled."),
         &Shop::leastHeld, Length(), Length::mm(1000)},
        {Setting::LongestStrip, "longest-strip", noted("Longest strip"),
         noted("Longest strip that your timber and machines allow."), &Shop::longestStrip,
         Length::mm(100), Length::mm(20'000)},
        {Setting::SliceShortest, "slice-shortest", noted("Shortest slice"),
         noted("Shortest slice that you will crosscut off a panel."), &Shop::sliceShortest,
         Length(), Length::mm(500)},
    };
    return settings;
}

const SettingInfo* settingInfo(Setting setting) {
    const std::vector<SettingInfo>& settings = shopSettings();
    const auto found = std::find_if(settings.begin(), settings.end(), [&](const SettingInfo& info) {
        return info.setting == setting;
    });
    return found == settings.end() ? nullptr : &*found;
}

std::vector<Fault> faults(const Shop& shop, const Notation& notation) {
    std::vector<Fault> found;
    for (const SettingInfo& info : shopSettings()) {
        const Length value = shop.*info.value;
        std::string rule;
        if (value <= Length() && info.least > Length()) {
            rule = say("must be more than 0");
        } else if (value < info.least) {
            rule = info.least == Length()
                       ? say("must not be less than 0")
                       : say("must be at least {1}", formatLeast(info.least, notation));
        } else if (value > info.greatest) {
            rule = say("must be at most {1}", formatGreatest(info.greatest, notation));
        }
        if (!rule.empty()) {
            found.push_back({say(info.name), rule, formatExact(value, notation)});
        }
    }
    if (shop.spareSlices < 0 || shop.spareSlices > mostSpareSlices) {
        found.push_back({say("Spare slices"), say("must be from {1} to {2}", 0, mostSpareSlices),
                         std::to_string(shop.spareSlices)});
    }
    return found;
}

}  // namespace kerfwright

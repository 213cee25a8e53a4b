// A project in which nothing lacks a price. The figures are invented.
#pragma once

#include "core/project/project.h"

namespace kerfwright {

/// With a price for everything.
inline Project priced(Project project) {
    for (Wood& wood : project.woods) {
        wood.price = {150'000};
    }
    project.currency = "€";
    project.pricing.benchHour = 3'850;
    project.pricing.glueKilogram = 1'200;
    project.pricing.finishLitre = 2'400;
    project.pricing.sundries = 250;
    project.pricing.selling = 12'500;
    project.pricing.tax = 8'875;
    project.pricing.rounding = FinalRounding::Five;
    project.pricing.customer = "The hut at the tarn";
    project.pricing.validUntil = "the end of May";
    return project;
}

}  // namespace kerfwright

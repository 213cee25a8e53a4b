// One function for each kind of sheet. Each appends the pages it needs.
#pragma once

#include "core/sheets/flow.h"
#include "core/sheets/record.h"

namespace kerfwright {

void addOverview(std::vector<Draft>& drafts, const Matter& matter, const Record& record);
void addCutList(std::vector<Draft>& drafts, const Matter& matter, const Record& record);
void addPanelGlueUp(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                    const PanelRecord& panel);
/// Of a panel that parts of other panels go into, with what is done to it before it is cut up; one
/// sheet for all panels that are glued alike.
void addDeepGlueUp(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                   const std::vector<const PanelRecord*>& alike);
void addSlicing(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                const PanelRecord& panel);
void addFinalGlueUp(std::vector<Draft>& drafts, const Matter& matter, const Record& record);
void addBorder(std::vector<Draft>& drafts, const Matter& matter, const Record& record);
/// What is cut into rails and field beyond their outline, and how it moves through the year.
void addJoinery(std::vector<Draft>& drafts, const Matter& matter);
void addMachineSettings(std::vector<Draft>& drafts, const Matter& matter, const Record& record);

}  // namespace kerfwright

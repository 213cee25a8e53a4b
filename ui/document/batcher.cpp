#include "ui/document/batcher.h"

#include "ui/document/text.h"

#include <utility>

namespace kerfwright {

Batcher::Batcher(QObject* parent)
    : QObject(parent) {
    connect(&work_, &Background::ended, this, &Batcher::changed);
}

void Batcher::forget() {
    work_.drop();
    last_.reset();
    fault_.clear();
    Q_EMIT changed();
}

void Batcher::plan(std::vector<Project> projects) {
    progress_ = 0;
    last_.reset();
    fault_.clear();
    work_.begin([this, projects = std::move(projects)](const Errand& errand) {
        Result<Batch> made = planBatch(projects, [&](const TimberProgress& progress) {
            errand.mention([this, done = progress.done] {
                progress_ = done;
                Q_EMIT changed();
            });
            return errand.goesOn();
        });
        if (!made.ok()) {
            errand.say([this, fault = toQt(made.fault().text())] { fault_ = fault; });
        } else {
            errand.say([this, batch = std::make_shared<const Batch>(std::move(made).value())] {
                last_ = batch;
            });
        }
    });
    Q_EMIT changed();
}

}  // namespace kerfwright

// One piece of work at a time beside the window. Newer work takes the place of older one, which is
// asked to stop; nothing that the older one still says is heard.
#pragma once

#include <QObject>
#include <QThreadPool>

#include <atomic>
#include <functional>
#include <memory>

namespace kerfwright {

class Background;

/// What the work holds on its thread: whether to go on, and the way back to the window's thread.
class Errand {
public:
    /// False: end with the best so far, or with nothing.
    bool goesOn() const { return !*stopAsked_; }
    /// Has `action` carried out on the window's thread, after everything said before.
    void say(std::function<void()> action) const;
    /// The same for what only the latest of matters: left out while an earlier one is on its way.
    void mention(std::function<void()> action) const;

private:
    friend class Background;
    std::shared_ptr<std::atomic<bool>> stopAsked_ = std::make_shared<std::atomic<bool>>(false);
    std::shared_ptr<std::atomic<bool>> mentioning_ = std::make_shared<std::atomic<bool>>(false);
    Background* background_ = nullptr;
};

class Background : public QObject {
    Q_OBJECT

public:
    explicit Background(QObject* parent = nullptr);
    /// Waits for the work to stop.
    ~Background() override;

    bool isWorking() const { return isWorking_; }
    void begin(std::function<void(const Errand&)> work);
    /// Asks for the best so far, which is still heard.
    void stop();
    /// Stops, and hears nothing more.
    void drop();

Q_SIGNALS:
    /// The work has said all that it had to say.
    void ended();

private:
    friend class Errand;

    QThreadPool pool_;
    Errand current_;
    bool isWorking_ = false;
};

}  // namespace kerfwright

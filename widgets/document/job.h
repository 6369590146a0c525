#pragma once

#include <QObject>
#include <QTimer>

#include <atomic>
#include <functional>
#include <memory>
#include <stop_token>
#include <thread>
#include <type_traits>
#include <utility>

namespace widgets {

/// One piece of engine work at a time, run off the UI thread. Starting again asks the older work to
/// stop and never delivers its result.
///
/// Lives on one thread with an event loop (the UI thread); every member is called there, and every
/// signal and `deliver` comes there. Make a Job a member of whatever `deliver` captures: the
/// destructor waits for the work, so that nothing arrives afterwards.
class Job final : public QObject {
    Q_OBJECT
public:
    /// Takes the done share, 0 to 1; callable from any thread, at any rate, by the work only.
    using Progress = std::function<void(double fraction)>;

    explicit Job(QObject* parent = nullptr);
    ~Job() override;  ///< Asks the work to stop and waits until it has.

    /// From start() until the result has arrived or the work has failed.
    [[nodiscard]] bool isRunning() const { return m_running; }

    /// @param work     Runs on another thread as work(std::stop_token, Progress) and returns a value.
    ///                 Must be copyable and own all it uses. An exception becomes failed().
    /// @param deliver  Runs on the Job's thread as deliver(the value), which is moved in. Never leaves
    ///                 that thread; must be copyable. It may start the next work, or destroy the Job.
    template <class Work, class Deliver>
    void start(Work work, Deliver deliver);

    /// Asks the work to stop. It still delivers what it has, even if it had not begun.
    void cancel();

    bool event(QEvent* event) override;  ///< What the worker posts when it has a result

signals:
    /// At most every 50 ms, only when it has risen, within 0 to 1; never after finished().
    void progressed(double fraction);
    /// Instead of a delivery, with the reason in a sentence.
    void failed(const QString& message);
    /// After a delivery or failed(), unless either of them started the next work.
    void finished();

private:
    using Result = std::shared_ptr<void>;
    using Task = std::function<Result(const std::stop_token&, const Progress&)>;
    using Delivery = std::function<void(void*)>;

    /// What passes between this thread and the worker, under a lock of its own. That of Qt's event queue
    /// would do for results, but no thread sanitizer sees it in a library that was not compiled for one.
    struct Shared;

    void launch(Task task, Delivery delivery);
    void work();  ///< On the worker's thread
    void arrive(quint64 generation, const Result& result, const QString& error);
    void showProgress();

    std::unique_ptr<Shared> m_shared;
    std::thread m_worker;  ///< From the first start on
    QTimer m_timer;
    std::stop_source m_stop;
    Delivery m_delivery;
    std::shared_ptr<std::atomic<double>>
        m_progress;  ///< One per start, so that older work cannot write to it.
    double m_shownProgress = 0.0;
    quint64 m_generation = 0;  ///< Counts starts. Read and written on the Job's thread only.
    bool m_running = false;
};

template <class Work, class Deliver>
void Job::start(Work work, Deliver deliver) {
    using Value = std::decay_t<std::invoke_result_t<Work&, std::stop_token, Progress>>;
    static_assert(!std::is_void_v<Value>, "work returns the value that is delivered");
    launch(
        [work = std::move(work)](const std::stop_token& stop, const Progress& progress) mutable -> Result {
            return std::make_shared<Value>(work(stop, progress));
        },
        [deliver = std::move(deliver)](void* value) mutable {
            deliver(std::move(*static_cast<Value*>(value)));
        });
}

}  // namespace widgets

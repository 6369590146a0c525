#include "widgets/document/job.h"

#include "engine/base/error.h"

#include <QCoreApplication>
#include <QEvent>
#include <QPointer>
#include <QThread>

#include <condition_variable>
#include <exception>
#include <mutex>
#include <new>
#include <optional>
#include <utility>

namespace widgets {
namespace {

constexpr int kProgressInterval_ms = 50;

QEvent::Type arrivalType() {
    static const int kType = QEvent::registerEventType();
    return static_cast<QEvent::Type>(kType);
}

/// The sentence of the exception in flight.
QString sentenceOfException() {
    try {
        throw;
    } catch (const std::bad_alloc&) {
        return Job::tr("There is not enough memory for this computation.");
    } catch (const std::exception& error) {
        if (auto sentence = QString::fromUtf8(error.what()); !sentence.isEmpty()) {
            return sentence;
        }
    } catch (...) {
    }
    return Job::tr("A fault of our own: the computation ended with an exception that says nothing.");
}

}  // namespace

struct Job::Shared {
    struct Piece {
        quint64 generation = 0;
        std::stop_token stop;
        std::shared_ptr<std::atomic<double>> progress;
        Task task;
    };
    struct Arrival {
        quint64 generation = 0;
        Result result;
        QString error;
    };
    std::mutex lock;
    std::condition_variable hasChanged;
    std::optional<Piece> next;
    std::optional<Arrival> latest;
    bool isEnding = false;
};

Job::Job(QObject* parent) : QObject(parent), m_shared(std::make_unique<Shared>()) {
    m_timer.setInterval(kProgressInterval_ms);
    connect(&m_timer, &QTimer::timeout, this, &Job::showProgress);
}

Job::~Job() {
    m_stop.request_stop();
    {
        const std::lock_guard guard(m_shared->lock);
        m_shared->isEnding = true;
        m_shared->next.reset();
    }
    m_shared->hasChanged.notify_one();
    if (m_worker.joinable()) {
        m_worker.join();  // what it posts until here is dropped by ~QObject
    }
}

void Job::launch(Task task, Delivery delivery) {
    engine::ensure(QThread::currentThread() == thread(), "a Job is started on its own thread");
    m_stop.request_stop();
    m_stop = std::stop_source();
    m_delivery = std::move(delivery);
    m_progress = std::make_shared<std::atomic<double>>(0.0);
    m_shownProgress = 0.0;
    m_running = true;
    ++m_generation;
    m_timer.start();
    {
        const std::lock_guard guard(m_shared->lock);  // older work that has not begun need not begin
        m_shared->next = Shared::Piece{m_generation, m_stop.get_token(), m_progress, std::move(task)};
    }
    if (m_worker.joinable()) {
        m_shared->hasChanged.notify_one();
    } else {
        m_worker = std::thread([this] { work(); });
    }
}

/// One piece after the other until the Job goes.
void Job::work() {
    while (true) {
        std::optional<Shared::Piece> piece;
        {
            std::unique_lock guard(m_shared->lock);
            m_shared->hasChanged.wait(guard, [&] { return m_shared->isEnding || m_shared->next; });
            if (m_shared->isEnding) {
                return;
            }
            piece = std::exchange(m_shared->next, std::nullopt);
        }
        Shared::Arrival arrival{piece->generation, nullptr, {}};
        try {
            arrival.result = piece->task(
                piece->stop, [slot = piece->progress](double fraction) { slot->store(fraction); });
        } catch (...) {
            arrival.error = sentenceOfException();
        }
        piece.reset();
        {
            const std::lock_guard guard(m_shared->lock);
            m_shared->latest = std::move(arrival);
        }
        QCoreApplication::postEvent(this, new QEvent(arrivalType()));
    }
}

bool Job::event(QEvent* event) {
    if (event->type() != arrivalType()) {
        return QObject::event(event);
    }
    std::optional<Shared::Arrival> latest;
    {
        const std::lock_guard guard(m_shared->lock);
        latest = std::exchange(m_shared->latest, std::nullopt);
    }
    if (latest) {  // one event may find the results of two, the second then finds none
        arrive(latest->generation, latest->result, latest->error);
    }
    return true;  // the Job may be gone by now
}

void Job::cancel() {
    m_stop.request_stop();
}

void Job::arrive(quint64 generation, const Result& result, const QString& error) {
    if (generation != m_generation) {
        return;
    }
    const QPointer<Job> alive(this);  // whatever is called from here may destroy the Job
    m_timer.stop();
    showProgress();
    if (!alive || generation != m_generation) {
        return;
    }
    m_running = false;
    QString message = error;
    const Delivery delivery = std::exchange(m_delivery, nullptr);
    if (result) {
        try {
            delivery(result.get());
        } catch (...) {
            message = sentenceOfException();
        }
    }
    if (alive && !message.isEmpty()) {
        emit failed(message);
    }
    if (alive && !m_running) {
        emit finished();
    }
}

void Job::showProgress() {
    const double fraction = m_progress->load();
    if (fraction > m_shownProgress && fraction <= 1.0) {
        m_shownProgress = fraction;
        emit progressed(fraction);
    }
}

}  // namespace widgets

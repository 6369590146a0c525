#include "widgets/document/job.h"

#include "engine/base/error.h"

#include <QPointer>
#include <QThread>

#include <exception>
#include <new>

namespace widgets {
namespace {

constexpr int kProgressInterval_ms = 50;

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

Job::Job(QObject* parent) : QObject(parent) {
    m_pool.setMaxThreadCount(1);
    m_timer.setInterval(kProgressInterval_ms);
    connect(&m_timer, &QTimer::timeout, this, &Job::showProgress);
}

Job::~Job() {
    m_stop.request_stop();
    m_pool.clear();
    // The work posts its result to `this`; what it posts until here is dropped by ~QObject.
    m_pool.waitForDone();
}

void Job::launch(Task task, Delivery delivery) {
    engine::ensure(QThread::currentThread() == thread(), "a Job is started on its own thread");
    m_stop.request_stop();
    m_pool.clear();  // older work that has not begun need not begin
    m_stop = std::stop_source();
    m_delivery = std::move(delivery);
    m_progress = std::make_shared<std::atomic<double>>(0.0);
    m_shownProgress = 0.0;
    m_running = true;
    ++m_generation;
    m_timer.start();

    m_pool.start([this, generation = m_generation, stop = m_stop.get_token(), slot = m_progress,
                  task = std::move(task)] {
        Result result;
        QString error;
        try {
            result = task(stop, [slot](double fraction) { slot->store(fraction); });
        } catch (...) {
            error = sentenceOfException();
        }
        QMetaObject::invokeMethod(
            this,
            [this, generation, result = std::move(result), error] { arrive(generation, result, error); },
            Qt::QueuedConnection);
    });
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

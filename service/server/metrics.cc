#include "service/server/metrics.h"

#include <exception>
#include <vector>

#include "prometheus/collectable.h"
#include "prometheus/counter.h"
#include "prometheus/exposer.h"
#include "prometheus/histogram.h"
#include "prometheus/registry.h"
#include "service/server/code_name.h"
#include "service/server/worker_pool.h"

namespace assay::service {
namespace {

// Seconds: a static explanation takes some hundred microseconds, a proof some
// ten milliseconds, a batch of proofs seconds.
const prometheus::Histogram::BucketBoundaries kSeconds = {
    0.0001, 0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025,
    0.05,   0.1,     0.25,   0.5,   1,      2.5,   5,    10};

prometheus::Counter& OneCounter(prometheus::Registry& registry,
                                const char* name, const char* help,
                                const prometheus::Labels& labels = {}) {
  return prometheus::BuildCounter()
      .Name(name)
      .Help(help)
      .Register(registry)
      .Add(labels);
}

prometheus::MetricFamily OneGauge(const char* name, const char* help,
                                  double value) {
  prometheus::ClientMetric metric;
  metric.gauge.value = value;
  prometheus::MetricFamily family;
  family.name = name;
  family.help = help;
  family.type = prometheus::MetricType::Gauge;
  family.metric.push_back(metric);
  return family;
}

}  // namespace

// Read when asked for.
class Metrics::Gauges : public prometheus::Collectable {
 public:
  Gauges(const Metrics& metrics, const WorkerPool& pool)
      : metrics_(metrics), pool_(pool) {}

  std::vector<prometheus::MetricFamily> Collect() const override {
    const std::chrono::duration<double> wait = pool_.Wait(Lane::kBulk);
    return {OneGauge("assay_calls_in_flight", "Calls begun and not ended.",
                     metrics_.in_flight()),
            OneGauge("assay_queue_tasks", "Tasks that wait for a worker.",
                     static_cast<double>(pool_.queued())),
            OneGauge("assay_queue_wait_seconds",
                     "How long a new batch would wait, as estimated.",
                     wait.count()),
            OneGauge("assay_workers", "Worker threads.", pool_.workers())};
  }

 private:
  const Metrics& metrics_;
  const WorkerPool& pool_;
};

Metrics::Metrics(const WorkerPool& pool)
    : registry_(std::make_shared<prometheus::Registry>()),
      good_items_(&OneCounter(*registry_, "assay_items_total",
                              "Positions of all calls, by how they ended.",
                              {{"outcome", "ok"}})),
      bad_items_(&OneCounter(*registry_, "assay_items_total",
                             "Positions of all calls, by how they ended.",
                             {{"outcome", "error"}})),
      nodes_(&OneCounter(*registry_, "assay_nodes_searched_total",
                         "Positions visited by the proofs in answers.")),
      tokens_refused_(&OneCounter(*registry_, "assay_tokens_refused_total",
                                  "Calls without the right token.")),
      gauges_(std::make_shared<Gauges>(*this, pool)) {
  auto& calls = prometheus::BuildCounter()
                    .Name("assay_calls_total")
                    .Help("Calls that ended, by method and status code.")
                    .Register(*registry_);
  auto& seconds = prometheus::BuildHistogram()
                      .Name("assay_call_seconds")
                      .Help("From the start of a call to its end.")
                      .Register(*registry_);
  for (std::size_t m = 0; m < kMethods; ++m) {
    for (std::size_t code = 0; code < kCodes; ++code) {
      calls_[m][code] =
          &calls.Add({{"method", kMethodNames[m]},
                      {"code", CodeName(static_cast<int>(code))}});
    }
    seconds_[m] = &seconds.Add({{"method", kMethodNames[m]}}, kSeconds);
  }
}

Metrics::~Metrics() = default;

void Metrics::CallEnded(Method method, grpc::StatusCode code,
                        std::chrono::nanoseconds took) {
  const auto m = static_cast<std::size_t>(method);
  --in_flight_;
  calls_[m][static_cast<std::size_t>(code)]->Increment();
  seconds_[m]->Observe(std::chrono::duration<double>(took).count());
}

void Metrics::ItemsDone(std::uint64_t good, std::uint64_t bad) {
  if (good > 0) good_items_->Increment(static_cast<double>(good));
  if (bad > 0) bad_items_->Increment(static_cast<double>(bad));
}

std::uint64_t Metrics::items() const {
  return static_cast<std::uint64_t>(good_items_->Value() + bad_items_->Value());
}

void Metrics::NodesSearched(std::uint64_t nodes) {
  if (nodes > 0) nodes_->Increment(static_cast<double>(nodes));
}

void Metrics::TokenRefused() { tokens_refused_->Increment(); }

absl::StatusOr<int> Metrics::Expose(int port) {
  // The library tells by exception that a port is taken.
  try {
    exposer_ = std::make_unique<prometheus::Exposer>(
        "127.0.0.1:" + std::to_string(port), 1);
    exposer_->RegisterCollectable(registry_);
    exposer_->RegisterCollectable(gauges_);
    return exposer_->GetListeningPorts().at(0);
  } catch (const std::exception& error) {
    return absl::UnavailableError("metrics-port: cannot listen: found " +
                                  std::to_string(port) + ", " + error.what());
  }
}

}  // namespace assay::service

// What the public contract allows; its comments in proto/assay/v1 state the
// same numbers.
#ifndef ASSAY_SERVICE_SERVER_LIMITS_H_
#define ASSAY_SERVICE_SERVER_LIMITS_H_

#include <cstddef>

namespace assay::service {

inline constexpr std::size_t kMostRequestBytes = std::size_t{1} << 20U;
inline constexpr std::size_t kMostAnswerBytes = std::size_t{16} << 20U;
inline constexpr int kMostBatch = 64;
inline constexpr int kMostScores = 4096;
inline constexpr std::size_t kMostTagBytes = 128;

// A lesson's PGN, and with it a request that has nothing else of size.
inline constexpr std::size_t kMostLessonBytes = std::size_t{8} << 20U;
inline constexpr std::size_t kMostLessonRequestBytes =
    kMostLessonBytes + (std::size_t{64} << 10U);

// What the transport lets in: a lesson's PGN of 8 MiB and room around it. Above
// it gRPC itself refuses, with RESOURCE_EXHAUSTED; below, we do, with
// INVALID_ARGUMENT as the contract says.
inline constexpr std::size_t kMostTransportBytes = std::size_t{9} << 20U;

// A stream holds at most so many items at once, from reading a request until
// its answer is handed to the transport; and reads no further while the
// requests that wait have so many bytes in all.
inline constexpr std::size_t kStreamWindow = 32;
inline constexpr std::size_t kStreamWindowBytes = kMostRequestBytes;

// A lesson's call holds so many pieces of its work a worker, from beginning one
// until it is its turn to be written.
inline constexpr std::size_t kLessonWindow = 2;

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_LIMITS_H_

// Names of gRPC's status codes.
#ifndef ASSAY_SERVICE_SERVER_CODE_NAME_H_
#define ASSAY_SERVICE_SERVER_CODE_NAME_H_

namespace assay::service {

inline const char* CodeName(int code) {
  constexpr const char* kNames[] = {"OK",
                                    "CANCELLED",
                                    "UNKNOWN",
                                    "INVALID_ARGUMENT",
                                    "DEADLINE_EXCEEDED",
                                    "NOT_FOUND",
                                    "ALREADY_EXISTS",
                                    "PERMISSION_DENIED",
                                    "RESOURCE_EXHAUSTED",
                                    "FAILED_PRECONDITION",
                                    "ABORTED",
                                    "OUT_OF_RANGE",
                                    "UNIMPLEMENTED",
                                    "INTERNAL",
                                    "UNAVAILABLE",
                                    "DATA_LOSS",
                                    "UNAUTHENTICATED"};
  return code >= 0 && code <= 16 ? kNames[code] : "UNKNOWN";
}

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_CODE_NAME_H_

// A lesson's key positions explained by a server.
#ifndef ASSAY_SERVICE_CLI_REMOTE_LESSON_H_
#define ASSAY_SERVICE_CLI_REMOTE_LESSON_H_

#include <functional>

#include "absl/status/status.h"
#include "service/cli/arguments.h"
#include "service/cli/lesson_record.h"
#include "service/client/client.h"

namespace assay::service {

// What a server takes of a lesson, as the contract has it.
inline constexpr std::size_t kMostRemoteGamesBytes = std::size_t{8} << 20U;

// Which positions are key positions is decided here, and the server has to come
// to the same: then its items are those of the tasks, in their order. What
// needs no explanation is made here. `skip` positions were explained before the
// tasks that are left.
//
// OK also where `sink` wants no more. INVALID_ARGUMENT with a message for the
// user where the lesson is too large; INTERNAL where the server does other than
// asked; else what the call ended with.
absl::Status ExplainRemotely(const Arguments& arguments, Client& client,
                             const LessonWork& work, const Lesson& lesson,
                             std::size_t skip, LessonTasks& tasks,
                             const std::function<bool(LessonRecord&)>& sink);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_REMOTE_LESSON_H_

/** `storyrod lint` as a build task: every spec of a folder, its findings among the problems. */

import {
  type Disposable,
  ShellExecution,
  ShellQuoting,
  Task,
  type TaskDefinition,
  TaskGroup,
  TaskRevealKind,
  tasks,
  type WorkspaceFolder,
  workspace,
} from "vscode";
import { find } from "./executable";
import { preferences, SECTION, surroundings } from "./settings";

const MATCHER = "$storyrod";

export function registerTasks(): Disposable {
  return tasks.registerTaskProvider(SECTION, {
    provideTasks: async () => {
      const found = await find(surroundings());
      // What is missing has been told already.
      if (found.kind === "unusable") return [];
      const definition = { type: SECTION, command: "lint" };
      return (workspace.workspaceFolders ?? []).map((folder) => lint(definition, folder, found.path));
    },
    // A task that somebody wrote into tasks.json.
    resolveTask: async ({ definition, scope }) => {
      const folder = typeof scope === "object" ? scope : workspace.workspaceFolders?.[0];
      if (definition["command"] !== "lint" || folder === undefined) return undefined;
      const found = await find(surroundings());
      return found.kind === "found" ? lint(definition, folder, found.path) : undefined;
    },
  });
}

function lint(definition: TaskDefinition, folder: WorkspaceFolder, program: string): Task {
  // A path may hold blanks.
  const command = { value: program, quoting: ShellQuoting.Strong };
  const execution = new ShellExecution(command, ["lint", "--format", "lines"], { cwd: folder.uri.fsPath });
  // Where the server tells of every file, the task would tell of all a second time.
  const matchers = preferences()["wholeWorkspace"] === false ? MATCHER : [];
  const task = new Task(definition, folder, "lint", SECTION, execution, matchers);
  task.group = TaskGroup.Build;
  task.presentationOptions = { reveal: TaskRevealKind.Silent };
  return task;
}

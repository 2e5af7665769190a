// The server's life: found, asked for its version, started, started again when it ends, and given up when it keeps ending.
import { commands, languages, LanguageStatusSeverity, workspace } from "vscode";
import type { ExtensionContext, LanguageStatusItem, LogOutputChannel } from "vscode";
import { CloseAction, ErrorAction, LanguageClient, State } from "vscode-languageclient/node";
import type { LanguageClientOptions, Middleware } from "vscode-languageclient/node";
import { findProgram, pythonIsThere, versionOf } from "./program";
import type { Program } from "./program";
import { sayDoesNotRun, sayKeepsEnding, sayNotFound } from "./trouble";

export const ROOMS = [
  { scheme: "file", language: "roomspec" },
  { scheme: "untitled", language: "roomspec" },
];
const ENDS = 4;
const MINUTES = 3;

export interface Server {
  /** Ends the one that runs, and looks for the program anew. */
  restart(): Promise<void>;
  stop(): Promise<void>;
}

export function makeServer(context: ExtensionContext, log: LogOutputChannel, ways: Middleware): Server {
  const status = statusItem(context);
  let client: LanguageClient | undefined;
  let ends: number[] = [];
  let last: Promise<void> = Promise.resolve();
  const next = (step: () => Promise<void>): Promise<void> => (last = last.then(step));

  async function start(): Promise<void> {
    show(status, "starting", LanguageStatusSeverity.Information, true);
    const folders = (workspace.workspaceFolders ?? []).map((folder) => folder.uri.fsPath);
    const setting = workspace.getConfiguration("roomspec").get<string[]>("command", []);
    const program = findProgram(setting, workspace.isTrusted ? folders : []);
    if (program === undefined) {
      log.error("roomspec was not found");
      show(status, "not found", LanguageStatusSeverity.Error);
      return sayNotFound(context.extensionUri, pythonIsThere());
    }
    log.info(`starting ${[program.command, ...program.args, "serve"].join(" ")}`);
    try {
      const version = await versionOf(program, folders[0]);
      const made = makeClient(program, folders[0], log, ways);
      made.onDidChangeState(({ newState }) => newState === State.Stopped && ended(made));
      await made.start();
      client = made;
      if (!made.isRunning()) return ended(made);
      serves(true);
      log.info(`${version} serves`);
      show(status, version, LanguageStatusSeverity.Information);
    } catch (error) {
      log.error(reasonOf(error));
      show(status, "does not run", LanguageStatusSeverity.Error);
      sayDoesNotRun(program.command, reasonOf(error));
    }
  }

  async function stop(): Promise<void> {
    const running = client;
    client = undefined;
    serves(false);
    await running?.dispose().catch((error: unknown) => log.warn(reasonOf(error)));
  }

  /** The client would start it again by itself, but is told of one end twice and then ends the new one. */
  function ended(which: LanguageClient): void {
    if (client !== which) return;
    client = undefined;
    serves(false);
    show(status, "not running", LanguageStatusSeverity.Error);
    ends = [...ends, Date.now()].filter((time) => time > Date.now() - MINUTES * 60_000);
    if (ends.length < ENDS) void next(start);
    else sayKeepsEnding(ends.length, MINUTES);
  }

  return { restart: () => next(() => stop().then(start)), stop: () => next(stop) };
}

/** Whatever goes wrong is written into the log; what a person is told of it stands in `trouble.ts`. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}

function makeClient(program: Program, folder: string | undefined, log: LogOutputChannel, middleware: Middleware): LanguageClient {
  const options: LanguageClientOptions = {
    documentSelector: ROOMS,
    outputChannel: log,
    middleware,
    errorHandler: {
      error: () => ({ action: ErrorAction.Continue, handled: true }),
      closed: () => ({ action: CloseAction.DoNotRestart, message: "the server has ended", handled: true }),
    },
    initializationFailedHandler: () => false,
  };
  const started = {
    command: program.command,
    args: [...program.args, "serve"],
    options: folder === undefined ? {} : { cwd: folder },
  };
  return new QuietClient("roomspec", "roomspec", started, options);
}

function serves(runs: boolean): void {
  void commands.executeCommand("setContext", "roomspec.serving", runs);
}

function statusItem(context: ExtensionContext): LanguageStatusItem {
  const status = languages.createLanguageStatusItem("roomspec", ROOMS);
  status.name = "roomspec";
  status.command = { title: "Start again", command: "roomspec.restart" };
  context.subscriptions.push(status);
  return status;
}

function show(status: LanguageStatusItem, text: string, severity: LanguageStatusSeverity, busy = false): void {
  status.text = text.startsWith("roomspec") ? text : `roomspec: ${text}`;
  status.severity = severity;
  status.busy = busy;
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: unknown }).code;
  if (code === "ENOENT") return "there is no such program";
  if (code === "EACCES") return "it may not be run";
  const said = (error as { stderr?: unknown }).stderr;
  const text = typeof said === "string" && said.trim() !== "" ? said : error instanceof Error ? error.message : String(error);
  return text.trim().split("\n").at(-1) ?? text;
}

// Where the program is that serves: what the setting says, else what the PATH has, else a virtual environment of the folder.
import { execFile } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { promisify } from "node:util";

export interface Program {
  readonly command: string;
  readonly args: readonly string[];
}

const WINDOWS = process.platform === "win32";

/** `folders` are those whose environments may be trusted. */
export function findProgram(setting: readonly string[], folders: readonly string[]): Program | undefined {
  const [command, ...args] = setting;
  if (command !== undefined) return { command, args };
  const places = folders.map((folder) => join(folder, ".venv", WINDOWS ? "Scripts" : "bin"));
  const found = firstIn([...pathFolders(), ...places], "roomspec");
  return found === undefined ? undefined : { command: found, args: [] };
}

export function pythonIsThere(): boolean {
  return ["python3", "python", "py"].some((name) => firstIn(pathFolders(), name) !== undefined);
}

/** What `--version` says. Throws where the program does not run. */
export async function versionOf(program: Program, folder: string | undefined): Promise<string> {
  const options = { timeout: 30_000, windowsHide: true, ...(folder === undefined ? {} : { cwd: folder }) };
  return (await promisify(execFile)(program.command, [...program.args, "--version"], options)).stdout.trim();
}

function pathFolders(): string[] {
  return (process.env["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
}

function firstIn(folders: readonly string[], name: string): string | undefined {
  return folders.map((folder) => join(folder, WINDOWS ? `${name}.exe` : name)).find(mayRun);
}

function mayRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

// Makes out/: the extension in one file, and the grammar that all editors share.
import { copyFileSync, mkdirSync } from "node:fs";
import { build } from "esbuild";

mkdirSync("out", { recursive: true });
copyFileSync("../roomspec.tmLanguage.json", "out/roomspec.tmLanguage.json");
await build({
  entryPoints: ["src/extension.ts"],
  outfile: "out/extension.js",
  bundle: true,
  minify: true,
  platform: "node",
  format: "cjs",
  target: "node20",
  external: ["vscode"],
  legalComments: "eof",
});

// node textmate_tokens.mjs MODULES GRAMMAR < JSON of {name: [line, ...]}: the same shape, each line as [[start, end, scope], ...].
// The engine is the one that VS Code uses; MODULES is the folder that its packages are installed in.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

const [modules, grammarFile] = process.argv.slice(2);
const require = createRequire(resolve(modules, "package.json"));
const textmate = require("vscode-textmate");
const oniguruma = require("vscode-oniguruma");

await oniguruma.loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")).buffer);
const registry = new textmate.Registry({
  onigLib: Promise.resolve({
    createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
    createOnigString: (text) => new oniguruma.OnigString(text),
  }),
  loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, "utf8"), grammarFile),
});
const grammar = await registry.loadGrammar("source.roomspec");

const found = {};
for (const [name, lines] of Object.entries(JSON.parse(readFileSync(0, "utf8")))) {
  let state = textmate.INITIAL;
  found[name] = lines.map((line) => {
    const read = grammar.tokenizeLine(line, state, 5000);
    if (read.stoppedEarly) throw new Error(`too slow: ${line}`);
    state = read.ruleStack;
    return read.tokens.map((token) => [token.startIndex, Math.min(token.endIndex, line.length), token.scopes.at(-1)]);
  });
}
process.stdout.write(JSON.stringify(found));

// Answers for `quantities.py`: @microsoft/recognizers-text-number-with-unit over messages on standard input.
// Usage: node quantities.mjs FOLDER_OF_NODE_MODULES

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

const PINNED = "1.3.1";
const NAME = "@microsoft/recognizers-text-number-with-unit";

const require = createRequire(resolve(process.argv[2], "x.js"));
const version = JSON.parse(readFileSync(resolve(process.argv[2], "node_modules", NAME, "package.json"))).version;
if (version !== PINNED) throw new Error(`${NAME} is ${version}, pinned is ${PINNED}`);
const units = require(NAME);
const numbers = require("@microsoft/recognizers-text-number");

// A number inside a quantity that was found is not told again; a percentage keeps its sign as its unit.
const answer = ({ culture, text }) => {
  const ask = (recognize) => {
    try {
      return recognize(text, culture);
    } catch {
      return [];
    }
  };
  const found = [
    ...ask(units.recognizeTemperature).map((r) => ({ ...r, unit: `degree ${r.resolution?.unit}` })),
    ...ask(units.recognizeDimension).map((r) => ({ ...r, unit: r.resolution?.unit })),
    ...ask(numbers.recognizePercentage).map((r) => ({ ...r, unit: "percent" })),
  ];
  const inside = (n) => found.some((f) => f.start <= n.start && n.end <= f.end);
  const bare = ask(numbers.recognizeNumber).filter((n) => !inside(n)).map((r) => ({ ...r, unit: "" }));
  return [...found, ...bare]
    .sort((a, b) => a.start - b.start)
    .map((r) => [Number(String(r.resolution?.value ?? "").replace("%", "")), r.unit])
    .filter(([value]) => Number.isFinite(value));
};

const asked = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(asked.map((m) => [m.id, answer(m)])));

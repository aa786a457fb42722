// Counts the texts of standard input (one JSON string a line) with the npm package
// sms-segments-calculator, and prints encoding, units and parts of each.
import { createRequire } from "node:module";
import { createInterface } from "node:readline";

const require = createRequire(process.argv[2] + "/");
const { SegmentedMessage } = require("sms-segments-calculator");

for await (const line of createInterface({ input: process.stdin })) {
  const m = new SegmentedMessage(JSON.parse(line));
  const units = m.encodedChars.reduce((n, c) => n + (c.codeUnits?.length ?? 1), 0);
  console.log(`${m.encodingName}\t${units}\t${m.segments.length}`);
}

// Reads JSON strings, one a line, and prints what the npm package email-reply-parser
// takes for newly written in each, as JSON strings.
import { createRequire } from "node:module";
import { createInterface } from "node:readline";

const require = createRequire(process.argv[2] + "/");
const EmailReplyParser = require("email-reply-parser").default ?? require("email-reply-parser");

for await (const line of createInterface({ input: process.stdin })) {
  const email = new EmailReplyParser().read(JSON.parse(line));
  console.log(JSON.stringify(email.getVisibleText()));
}

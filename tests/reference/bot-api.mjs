// The bot against an independent emulator of the Bot API from a package registry: by hand, where that package is installed.
// Usage: npm install --prefix FOLDER telegram-test-api@4.2.1
//        node bot-api.mjs FOLDER path/to/hosebib
//
// The emulator knows getMe, getUpdates, sendMessage, editMessageText, answerCallbackQuery and a few more; it holds no
// request open, checks no limit and sends no edits of people's messages, so those stay with the stand-in in `tests/edge/botapi`.

import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const PINNED = "4.2.1";
const NAME = "telegram-test-api";
const TOKEN = "123456:AAoutside_emulator";

const folder = resolve(process.argv[2]);
const version = JSON.parse(readFileSync(join(folder, "node_modules", NAME, "package.json"))).version;
if (version !== PINNED) throw new Error(`${NAME} is ${version}, pinned is ${PINNED}`);
const emulator = createRequire(join(folder, "x.js"))(NAME);
const Server = emulator.default ?? emulator.TelegramServer ?? emulator;

const fleet = mkdtempSync(join(tmpdir(), "fleet-"));
const data = mkdtempSync(join(tmpdir(), "data-"));
const write = (name, text) => writeFileSync(join(fleet, name), text);
write("fleet.toml", 'company = "Saltbox Lane Comforts"\n[[trailer]]\nid = "12"\nwaste_gal = 500\n');
write("jobs.toml", "");
write("crew.toml", '[[crew]]\nid = "dana"\nname = "Dana"\nlanguage = "en"\nchat_user = 77\n');

const server = new Server({ port: 9471, host: "127.0.0.1" });
await server.start();
const start = () =>
  spawn(process.argv[3], ["serve", "--api-url", "http://127.0.0.1:9471", "--data", data, "--fleet", fleet], {
    env: { ...process.env, HOSEBIB_TOKEN: TOKEN, NO_PROXY: "127.0.0.1" },
    stdio: ["ignore", "ignore", "inherit"],
  });
const ended = (child) => new Promise((done) => child.once("exit", done));
const client = server.getClient(TOKEN, { userId: 77, chatId: 77, firstName: "Dana", timeout: 20000 });
const stranger = server.getClient(TOKEN, { userId: 500, chatId: 500, firstName: "Nobody", timeout: 20000 });

const told = (chat) => server.storage.botMessages.filter((sent) => Number(sent.message.chat_id) === chat);
const waitFor = async (what, holds) => {
  for (let tries = 0; tries < 400; tries += 1) {
    const found = holds();
    if (found) return found;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`never came: ${what}; sent ${JSON.stringify(told(77).map((sent) => sent.message.text))}`);
};
const answer = (chat, count) => waitFor(`answer ${count} to ${chat}`, () => told(chat)[count - 1]);
let passed = 0;
const check = (what, holds) => {
  if (!holds) throw new Error(`not so: ${what}`);
  console.log(`ok: ${what}`);
  passed += 1;
};

let bot = start();
await client.sendMessage(client.makeMessage("unit 12 pressure 95, after the regulator"));
const first = await answer(77, 1);
check("a report is answered with a warning", first.message.text.startsWith("WARNING 12"));
check("the answer quotes the message", Number(first.message.reply_parameters?.message_id) > 0);
const buttons = first.message.reply_markup.inline_keyboard.flat();
check("it offers at most four answers", buttons.length > 0 && buttons.length <= 4);
check("each key fits into 64 bytes", buttons.every((button) => Buffer.byteLength(button.callback_data) <= 64));

const done = buttons.find((button) => button.text === "Done 1");
const press = (who, key) => who.sendCallback(who.makeCallbackQuery(key, { message: { message_id: first.messageId } }));
await press(client, done.callback_data);
const second = await answer(77, 2);
check("a press is answered like the words", /Task 1 .*done/.test(second.message.text));
await press(client, "forged");
await press(client, done.callback_data);

await stranger.sendMessage(stranger.makeMessage("unit 12 arrived"));
const neutral = await answer(500, 1);
check("a stranger gets one neutral line", !neutral.message.text.includes("12"));

bot.kill("SIGKILL");
await ended(bot);
bot = start();
await client.sendCommand(client.makeCommand("/status 12"));
const third = await answer(77, 3);
check("after a kill the next message is answered, and nothing forged or pressed twice was", third.message.text.includes("12"));

bot.kill("SIGTERM");
check("it ends well when it is asked to", (await ended(bot)) === 0);
const verify = spawnSync(process.argv[3], ["verify", "--data", data], { encoding: "utf8" });
check("its journal verifies", verify.status === 0);
await server.stop();
console.log(`${passed} passed, 0 failed`);
process.exit(0);

// One walk through the page in a real browser, as a person would go it. Says what it saw, a line each; the first thing
// that is not as it should be ends it with 1. Called with the address, the folder of the file, and where pictures go.

const fs = require("node:fs");
const path = require("node:path");
const assert = require("node:assert");
const { execFileSync } = require("node:child_process");
const { createRequire } = require("node:module");

const [, , address, folder, program, modules, chromium] = process.argv;
const from = createRequire(path.join(modules, "package.json"));
const puppeteer = from("puppeteer-core");
const axe = fs.readFileSync(from.resolve("axe-core/axe.min.js"), "utf8");
const pause = (ms) => new Promise((done) => setTimeout(done, ms));
const file = path.join(folder, "file.toml");

/** The draft of a measurement file, as the command prints it. */
function drafted(text) {
  fs.writeFileSync(path.join(folder, "copy.toml"), text);
  try {
    return JSON.parse(execFileSync(program, ["draft", "--json", "copy.toml"], { cwd: folder }));
  } catch (error) {
    if (error.status === 1) return JSON.parse(error.stdout);
    throw error;
  }
}

async function main() {
  const browser = await puppeteer.launch({ executablePath: chromium, headless: true, args: ["--no-sandbox", "--disable-gpu"] });
  try {
    await walk(browser);
  } catch (error) {
    for (const page of (await browser.pages()).slice(-1)) {
      await page.screenshot({ path: path.join(folder, "failed.png") });
      console.log(`the page said: ${await text(page, "#state")}`);
    }
    throw error;
  } finally {
    await browser.close();
  }
}

async function opened(browser, size, complaints) {
  const page = await browser.newPage();
  page.on("console", (line) => ["error", "warn"].includes(line.type()) && complaints.push(`console: ${line.text()}`));
  page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
  page.on("dialog", (dialog) => dialog.accept());
  page.on("request", (request) => {
    const { hostname, protocol } = new URL(request.url());
    if (!["127.0.0.1", ""].includes(hostname) || !["http:", "data:", "blob:"].includes(protocol)) complaints.push(`off loopback: ${request.url()}`);
  });
  await page.setViewport(size);
  await page.goto(address, { waitUntil: "load" });
  await page.waitForSelector("body[data-ready]", { timeout: 20000 });
  return page;
}

const text = (page, selector) => page.$eval(selector, (it) => it.textContent);
const value = (page, selector) => page.$eval(selector, (it) => it.value);

async function until(what, call) {
  for (let tries = 0; tries < 200; tries += 1) {
    if (await call()) return;
    await pause(50);
  }
  throw new Error(`waited in vain: ${what}`);
}

/** Every edge on the sheet and every level in the margin, against the draft. */
async function same(page, draft, unit = "cm") {
  for (const piece of draft.pieces) {
    for (const { edge, path } of piece.edges) {
      const line = await page.$eval(`#panels [data-line="${piece.panel} ${edge}"]`, (it) => it.getAttribute("d"));
      assert.strictEqual(line, path, `${piece.panel} ${edge}`);
    }
  }
  for (const level of draft.levels) {
    const shown = await page.$eval(`[data-row="${level.level}"]`, (row) => [
      row.querySelector("input").value, row.querySelector(".pattern output").textContent, row.querySelector(".ease output").textContent]);
    const number = (it) => Number(it.replace("−", "-"));
    assert.ok(Math.abs(number(shown[0]) - level.body) <= 0.0501, `${level.level} body ${shown[0]} ${level.body}`);
    assert.ok(Math.abs(number(shown[1]) - level.pattern) <= 0.0501, `${level.level} pattern ${shown[1]} ${level.pattern}`);
    assert.ok(Math.abs(number(shown[2]) - level.ease) <= 0.0501, `${level.level} ease ${shown[2]} ${level.ease}`);
  }
}

async function type(page, selector, words) {
  await page.focus(selector);
  await page.$eval(selector, (it) => it.select());
  await page.keyboard.type(words);
  await page.keyboard.press("Enter");
}

async function sound(page, where) {
  await page.evaluate(axe);
  const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  const serious = found.violations.filter((it) => ["serious", "critical"].includes(it.impact));
  assert.deepStrictEqual(serious.map((it) => `${it.id}: ${it.nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`), [], where);
  console.log(`axe, ${where}: ${found.violations.length} findings, none serious`);
}

async function walk(browser) {
  const complaints = [];
  const first = fs.readFileSync(file, "utf8");
  const page = await opened(browser, { width: 1440, height: 900 }, complaints);
  await same(page, drafted(first));
  console.log("opened: lines and numbers as draft --json has them");
  await sound(page, "desktop");

  await type(page, "#body-hip", "410");
  await until("the reason at its level", () => page.$eval("#body-hip-wrong", (it) => !it.hidden && it.textContent.includes("hip_girth")));
  await same(page, { ...drafted(first), levels: [] });
  console.log("a bad number: its reason at its level, the last good draft stays");
  await type(page, "#body-hip", "103");
  await until("the change named", async () => (await text(page, "#undo")).includes("103"));
  const hip = first.replace(/hip_girth = 101.5/, "hip_girth = 103");
  await same(page, drafted(hip));
  console.log("hip changed: equal to the file with the same change");

  await dragged(page);
  const range = '[data-key="thigh.front"] input[type=range]';
  const opening = Number(await value(page, range));
  const given = /^\[thigh\]/m.test(hip) ? hip.replace(/^front = .*$/m, `front = ${opening}`) : `${hip}\n[thigh]\nfront = ${opening}\n`;
  await same(page, drafted(given));
  console.log(`front thigh dragged to ${opening}: equal to the file with the same change`);
  await page.screenshot({ path: path.join(folder, "dragged.png") });
  await page.keyboard.press("Escape");

  await page.click("#undo");
  await until("undone", async () => (await text(page, "#redo")).includes("front thigh"));
  await same(page, drafted(hip));
  await page.click("#redo");
  await until("redone", async () => (await text(page, "#undo")).includes("front thigh"));
  await same(page, drafted(given));
  console.log("undone and done again");

  await page.click("#play");
  await until("a step", async () => (await text(page, "#step-words")).startsWith("2 of"));
  await until("lines of the construction", async () => (await page.$$("#steps path")).length >= 3);
  await page.$eval("#step", (it) => { it.value = it.max; it.dispatchEvent(new Event("input")); });
  const steps = drafted(given).steps;
  assert.ok((await text(page, "#step-words")).startsWith(`${steps.length} of ${steps.length}`));
  await page.click("#end-replay");
  console.log(`construction replayed: ${steps.length} steps`);

  const before = fs.readFileSync(file, "utf8");
  await page.click("#save");
  await until("saved", () => fs.readFileSync(file, "utf8") !== before);
  await until("said so", async () => (await text(page, "#state")).includes("Saved"));
  const saved = fs.readFileSync(file, "utf8");
  for (const comment of before.match(/#.*/g) ?? []) assert.ok(saved.includes(comment), comment);
  assert.deepStrictEqual(drafted(saved).pieces, drafted(given).pieces);
  console.log("saved: comments kept, the same draft");
  await page.goto(address, { waitUntil: "load" });
  await page.waitForSelector("body[data-ready]");
  await same(page, drafted(saved));
  console.log("reloaded: as saved");

  fs.writeFileSync(file, saved.replace("hip_girth = 103", "hip_girth = 102"));
  await until("drawn again", async () => (await value(page, "#body-hip")) === "102.0");
  await type(page, "#body-hip", "104");
  await until("changed", async () => (await text(page, "#undo")).includes("104"));
  await page.evaluate(() => { window.held = true; });
  fs.writeFileSync(file, saved.replace("hip_girth = 103", "hip_girth = 105"));
  await page.click("#save");
  await pause(700);
  assert.ok(await page.$eval("#elsewhere", (it) => it.open), "asked, whether or not the sheet had drawn the edit meanwhile");
  assert.ok((await text(page, "#elsewhere")).includes("105"));
  await page.evaluate(() => [...document.querySelectorAll("#elsewhere button")][0].click());
  await until("mine on top", () => fs.readFileSync(file, "utf8").includes("hip_girth = 104"));
  console.log("edited elsewhere: drawn again; both wrote: asked, nothing lost");
  fs.writeFileSync(file, saved);
  await until("drawn again", async () => (await value(page, "#body-hip")) === "103.0");

  await downloaded(page);
  await fitted(page);
  await keys(page);
  assert.deepStrictEqual(complaints, []);
  await page.close();
  await sizes(browser, complaints);
  await mended(browser, complaints);
  assert.deepStrictEqual(complaints, []);
  console.log("no console error, no request off loopback");
}

/** Drags the ruler of the front thigh, and counts what a hand would feel. */
async function dragged(page) {
  await page.click('[data-place="front thigh"]');
  const ruler = await page.waitForSelector('[data-key="thigh.front"] input[type=range]');
  const box = await ruler.boundingBox();
  const at = (part) => [box.x + box.width * part, box.y + box.height / 2];
  await page.evaluate(() => {
    window.sheetWork = [];
    window.sheetFrames = [];
    new PerformanceObserver((list) => {
      for (const it of list.getEntriesByName("picture")) window.sheetWork.push(it.duration);
    }).observe({ entryTypes: ["measure"] });
    let since = null;
    document.querySelector('[data-key="thigh.front"] input[type=range]').addEventListener("input", () => { since ??= performance.now(); });
    new MutationObserver(() => {
      const began = since;
      since = null;
      if (began !== null) requestAnimationFrame(() => window.sheetFrames.push(performance.now() - began));
    }).observe(document.querySelector('#panels [data-line="front inseam"]'), { attributes: true });
  });
  await page.mouse.move(...at(0.3));
  await page.mouse.down();
  for (let i = 0; i <= 120; i += 1) {
    await page.mouse.move(...at(0.3 + 0.3 * Math.sin(i / 20)));
    await pause(16);
  }
  await page.mouse.move(...at(0.6));
  await page.mouse.up();
  await until("the drag named", async () => (await text(page, "#undo")).includes("front thigh"));
  const sorted = (name) => page.evaluate((it) => [...window[it]].sort((a, b) => a - b), name);
  const part = (all, share) => all[Math.min(all.length - 1, Math.floor(all.length * share))];
  const [work, frames] = [await sorted("sheetWork"), await sorted("sheetFrames")];
  const line = (all) => `${part(all, 0.5).toFixed(1)} ms, 95 of 100 under ${part(all, 0.95).toFixed(1)} ms (${all.length})`;
  console.log(`work of the page for a picture: half under ${line(work)}`);
  console.log(`from the hand to the picture: half under ${line(frames)}`);
  assert.ok(work.length > 20, `${work.length} pictures`);
  if (process.env.BREEKS_STRICT_TIME) {
    assert.ok(part(work, 0.5) <= 4 && part(work, 0.95) <= 10, "page too slow");
    assert.ok(part(frames, 0.95) <= 34, "picture too late");
  }
}

/** Takes the wall drawing away and measures its test square as poppler sees it. */
async function downloaded(page) {
  const session = await page.browser().target().createCDPSession();
  await session.send("Browser.setDownloadBehavior", { behavior: "allow", downloadPath: folder });
  await page.click("#take summary");
  await page.click('[data-file="wall"]');
  const pdf = path.join(folder, `${drafted(fs.readFileSync(file, "utf8")).name}-classic-wall.pdf`);
  await until("the file", () => fs.existsSync(pdf));
  await pause(200);
  execFileSync(program, ["draft", "file.toml", "--out", "out"], { cwd: folder, stdio: "ignore" });
  const [stroke] = fs.readdirSync(path.join(folder, "out")).filter((it) => /^[^.]*-classic\.pdf$/.test(it));
  // only the seal that marks a written file as ours, and what is counted from its length, are not in a file taken away
  const objects = (file) => fs.readFileSync(file, "latin1").split(/(?:%breeks seal .*\n)?xref\n/)[0];
  assert.strictEqual(objects(pdf), objects(path.join(folder, "out", stroke)), "as the command writes it");
  assert.ok(objects(pdf).length > 10000);
  // its page against the drawing's own size: 72 points are 2.54 cm
  const box = fs.readFileSync(pdf, "latin1").match(/\/MediaBox \[\s*0 0 ([\d.]+) ([\d.]+)/).slice(1).map(Number);
  const svg = fs.readFileSync(path.join(folder, "out", stroke.replace(".pdf", ".svg")), "utf8");
  const size = ["width", "height"].map((side) => Number(svg.match(new RegExp(`<svg[^>]* ${side}="([\\d.]+)cm"`))[1]));
  size.forEach((cm, index) => assert.ok(Math.abs((box[index] / 72) * 2.54 - cm) < 0.01, `${box} ${size}`));
  await page.click("#take summary");
  console.log(`taken away: ${path.basename(pdf)}, at true scale ${size.map((cm) => cm.toFixed(1)).join(" by ")} cm`);
}

/** A toile question answered and its change done. */
async function fitted(page) {
  await page.click("#open-drawer");
  await page.click("#drawer-toile summary");
  await page.waitForSelector("#toile-0");
  const choose = async (field, words) => {
    const at = await page.$eval(field, (it, wanted) => [...it.options].find((option) => option.textContent.startsWith(wanted)).value, words);
    await page.select(field, at);
    await pause(300);
  };
  await choose("#toile-0", "thigh");
  await choose("#toile-1", "front");
  await choose("#toile-2", "tight lines across");
  await until("causes", async () => (await page.$$(".causes li")).length > 0);
  for (let tests = 0; tests < 6 && !(await page.$("#toile-do")); tests += 1) {
    const test = await page.$(".test button");
    assert.ok(test, await text(page, "#toile-outcome"));
    await test.click();
    await pause(400);
  }
  await sound(page, "toile in the drawer");
  await page.screenshot({ path: path.join(folder, "toile.png") });
  const change = await text(page, "#drawer .change");
  const [, key, to] = change.match(/^([a-z_.]+): \S+ to (\S+) /);
  await page.click("#toile-do");
  await until("done", async () => (await text(page, "#undo")).includes("toile"));
  const before = fs.readFileSync(file, "utf8");
  await page.click("#save");
  await until("saved", () => fs.readFileSync(file, "utf8") !== before);
  const after = fs.readFileSync(file, "utf8");
  assert.ok(after.includes("[[fitting]]") && after.includes(key), after);
  assert.strictEqual(drafted(after).adjustments[key].value, Number(to.replace("−", "-")));
  await until("in the record", async () => (await text(page, "#drawer-record")).includes("Changed"));
  console.log(`toile answered: ${change} Done, saved, in the record`);
  await page.click("#open-drawer");
}

/** Without a mouse: to a level, to a place, along its ruler, back, and the paper moved. */
async function keys(page) {
  await page.evaluate(() => document.activeElement.blur());
  const reached = new Set();
  for (let i = 0; i < 90; i += 1) {
    await page.keyboard.press("Tab");
    reached.add(await page.evaluate(() => document.activeElement.id || document.activeElement.dataset.place || document.activeElement.textContent.slice(0, 20)));
  }
  for (const wanted of ["block", "under", "drawing", "body-waist", "body-hip", "body-crotch_seam", "front thigh", "seat", "knee", "play", "open-drawer"]) {
    assert.ok(reached.has(wanted), `Tab reaches ${wanted}: ${[...reached].join(", ")}`);
  }
  await page.focus('[data-place="seat"]');
  await page.keyboard.press("Enter");
  await until("the rulers", () => page.evaluate(() => document.activeElement.type === "range" || document.activeElement.closest("#card")));
  await page.focus('[data-key="seat.length"] input[type=range]');
  const before = await text(page, "#undo");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await until("a named change", async () => (await text(page, "#undo")) !== before);
  await page.keyboard.press("Escape");
  assert.strictEqual(await page.evaluate(() => document.activeElement.dataset.place), "seat");
  await page.$eval("#drawing", (it) => it.focus());
  const place = () => page.$eval("#world", (it) => it.getAttribute("transform"));
  const still = await place();
  for (const key of ["+", "ArrowLeft", "ArrowDown"]) {
    const was = await place();
    await page.keyboard.press(key);
    assert.notStrictEqual(await place(), was, key);
  }
  await page.keyboard.press("0");
  assert.strictEqual(await place(), still);
  while (!(await page.$eval("#undo", (it) => it.disabled))) {
    const named = await text(page, "#undo");
    await page.keyboard.down("Control");
    await page.keyboard.press("z");
    await page.keyboard.up("Control");
    await until("undone by key", async () => (await text(page, "#undo")) !== named);
  }
  console.log("keyboard alone: levels, places, rulers, paper, undo");
}

/** Phone, tablet and desktop, light and dark: nothing beyond the edge of the page. */
async function sizes(browser, complaints) {
  for (const [name, width, height, dark] of [["phone", 390, 844, false], ["tablet", 834, 1112, true], ["desktop", 1440, 900, true]]) {
    const page = await opened(browser, { width, height, hasTouch: width < 900 }, complaints);
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: dark ? "dark" : "light" }]);
    await pause(200);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth), `${name} scrolls sideways`);
    await sound(page, `${name}${dark ? ", dark" : ""}`);
    await page.screenshot({ path: path.join(folder, `${name}.png`) });
    if (width < 900) await page.tap('[data-place="front thigh"]');
    else await page.click('[data-place="front thigh"]');
    await page.waitForSelector('[data-key="thigh.front"]', { timeout: 5000 });
    await pause(100);
    await sound(page, `${name}, rulers open`);
    await page.screenshot({ path: path.join(folder, `${name}-rulers.png`) });
    await page.close();
  }
}

/** A file that cannot be drafted at first says so, and is drawn when it is mended elsewhere. */
async function mended(browser, complaints) {
  const good = fs.readFileSync(file, "utf8");
  fs.writeFileSync(file, good.replace(/hip_girth = [\d.]+/, "hip_girth = 10"));
  await pause(700);
  const page = await opened(browser, { width: 1440, height: 900 }, complaints);
  assert.ok((await text(page, "#state")).includes("Mend the file"), await text(page, "#state"));
  fs.writeFileSync(file, good);
  await until("drawn", () => page.evaluate(() => !document.body.classList.contains("undrafted")));
  await same(page, drafted(good));
  assert.strictEqual(await text(page, "#state"), "");
  await page.close();
  console.log("a file that cannot be drafted: said so, drawn when mended");
}

main().catch((error) => {
  console.error(error.stack ?? error);
  process.exit(1);
});

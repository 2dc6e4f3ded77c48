// Opens a page in a browser, wide and narrow, light and dark, and tells what is
// wrong with it, as JSON: what axe-core and html-validate find, links that lead
// nowhere, errors of scripts, what it asks of a network, and its width.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import { HtmlValidate } from "html-validate";
import { chromium } from "playwright-core";

const [, , file, browserPath] = process.argv;

// Ids are those of the record, with dots; the role of a drawing with links is
// spelt out because browsers differ in what they take it for.
const validate = new HtmlValidate({
  extends: ["html-validate:recommended"],
  rules: { "valid-id": ["error", { relaxed: true }], "no-redundant-role": "off", "long-title": "off", "no-inline-style": "error" },
});
const checked = await validate.validateString(readFileSync(file, "utf8"), file);
const invalid = checked.results.flatMap((r) => r.messages.map((m) => `${m.line}:${m.column} ${m.ruleId}: ${m.message}`));

const browser = await chromium.launch({ executablePath: browserPath, args: ["--no-sandbox"] });
const views = [];
for (const width of [1280, 390]) {
  for (const colorScheme of ["light", "dark"]) {
    const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
    const page = await context.newPage();
    const errors = [];
    const asked = [];
    page.on("pageerror", (e) => errors.push(e.message));
    page.on("console", (m) => m.type() === "error" && errors.push(m.text()));
    page.on("dialog", (d) => { errors.push(`dialog: ${d.message()}`); d.dismiss(); });
    page.on("request", (r) => asked.push(r.url()));
    await page.goto(pathToFileURL(file).href);
    const seen = await page.evaluate(() => {
      const ids = [...document.querySelectorAll("[id]")].map((e) => e.id);
      const known = new Set(ids);
      return {
        wide: document.documentElement.scrollWidth,
        dangling: [...document.querySelectorAll('a[href^="#"]')].map((a) => a.getAttribute("href")).filter((h) => !known.has(decodeURIComponent(h.slice(1)))),
        twice: ids.filter((id, i) => ids.indexOf(id) !== i),
        links: document.querySelectorAll('a[href^="#"]').length,
        marks: document.querySelectorAll('svg a[href^="#finding-"]').length,
        drawn: document.querySelectorAll('.finding a[href^="#draw-"]').length,
        scripts: document.scripts.length,
        text: document.body.innerText.length,
      };
    });
    seen.reached = await page.evaluate(() => {
      const link = document.querySelector('.finding a[href^="#working-"]');
      if (!link) return "none";
      link.click();
      return new Promise((done) => setTimeout(() => done(document.getElementById(decodeURIComponent(link.hash.slice(1))).open ? "open" : "closed"), 50));
    });
    const found = await page.evaluate(`(() => { const module = undefined, exports = undefined; ${axe.source}; return window.axe.run(document, { resultTypes: ["violations"] }); })()`);
    views.push({
      width, scheme: colorScheme, ...seen, errors, asked: asked.slice(1),
      axe: found.violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)}`)),
    });
    await context.close();
  }
}
const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
await plain.goto(pathToFileURL(file).href);
const unscripted = await plain.locator("main").innerText();
await browser.close();
process.stdout.write(JSON.stringify({ invalid, views, unscripted }));

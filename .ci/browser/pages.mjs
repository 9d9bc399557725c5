// Looks at every sheet of a folder: node pages.mjs FOLDER OUT. At 360 and 1280 px, light and
// dark by turns, and printed. A sheet of a day under way (its name ends with -later) has the
// first step that is not done on the first screen of a phone.
import fs from 'node:fs';
import path from 'node:path';
import { looker } from './look.mjs';

const [folder, out] = process.argv.slice(2);
const firstScreen = 800; // px
const mostPages = 2;
const look = await looker(out);
await look.selfTest();
const names = fs.readdirSync(folder).filter((n) => n.endsWith('.html')).sort();
let deepest = 0;
for (const [i, name] of names.entries()) {
  const html = fs.readFileSync(path.join(folder, name), 'utf8');
  const drawn = /^\d/.test(name); // by lot: there are many
  await look.valid(name, html);
  const [one, other] = i % 2 ? ['light', 'dark'] : ['dark', 'light'];
  const looks = drawn ? [[360, one], [1280, other]] : [[360, 'light'], [360, 'dark'], [1280, 'light'], [1280, 'dark']];
  await look.view(name, html, looks, { check: look.accessible, once: drawn, letters: true, picture: !drawn || i % 10 === 0 });
  if (!drawn) {
    const pages = await look.printed(name, html, 'Letter');
    console.log(`${name}: ${pages} pages of Letter`);
    if (pages > mostPages) look.fault(name, `it prints on ${pages} pages`);
  }
  if (/-later/.test(name)) {
    const down = await look.firstStep(html);
    deepest = Math.max(deepest, down);
    if (down > firstScreen) look.fault(name, `the first step that is not done stands ${down} px down`);
    if (!drawn) console.log(`${name}: the first step that is not done ends ${down} px down`);
  }
}
if (!names.length) look.fault(folder, 'there are no sheets');
await look.done(`${names.length} sheets, first steps at most ${deepest} px down`);

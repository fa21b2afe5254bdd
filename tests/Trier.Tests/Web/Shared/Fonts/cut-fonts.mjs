// Cuts the vendored web fonts from the upstream TrueType files. Needed only to refresh them, never to build.
//   npm install source-sans@3.52.0 source-serif@4.5.1 subset-font
//   node cut-fonts.mjs NODE_MODULES OUT_FOLDER
// The licence reserves the name "Source" for the uncut fonts, so the cut ones carry names of our own.
import { createRequire } from 'node:module';
import { readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';

const [modules, out] = process.argv.slice(2).map((path) => resolve(path));
const require = createRequire(join(modules, 'index.js'));
const subset = require('subset-font');
const fontverter = require('fontverter');

const faces = [
  ['source-sans/TTF/SourceSans3-Regular.ttf', 'trier-sans-regular', 'Trier Sans', 'Regular'],
  ['source-sans/TTF/SourceSans3-Semibold.ttf', 'trier-sans-semibold', 'Trier Sans', 'Semibold'],
  ['source-serif/TTF/SourceSerif4-Regular.ttf', 'trier-serif-regular', 'Trier Serif', 'Regular'],
  ['source-serif/TTF/SourceSerif4-It.ttf', 'trier-serif-italic', 'Trier Serif', 'Italic'],
  ['source-serif/TTF/SourceSerif4-Semibold.ttf', 'trier-serif-semibold', 'Trier Serif', 'Semibold'],
  ['source-serif/TTF/SourceSerif4-SemiboldIt.ttf', 'trier-serif-semibold-italic', 'Trier Serif', 'Semibold Italic'],
  ['source-serif/TTF/SourceSerif4Display-Regular.ttf', 'trier-serif-display', 'Trier Serif Display', 'Regular'],
];

const ranges = [
  [0x20, 0x7e], [0xa0, 0x17f], [0x218, 0x21b], [0x2002, 0x200a], [0x2010, 0x2015], [0x2018, 0x201e],
  [0x2020, 0x2022], [0x2080, 0x2089], [0x2153, 0x2154], [0x215b, 0x215e], [0x2190, 0x2193],
];
const singles = [
  0x3b1, 0x3bc, 0x3c1, 0x3c7, 0x1e9e, 0x2026, 0x202f, 0x2030, 0x2032, 0x2033, 0x2039, 0x203a, 0x2044, 0x2070, 0x2074,
  0x20ac, 0x2122, 0x2212, 0x2248, 0x2260, 0x2264, 0x2265, 0x2713,
];
const characters = String.fromCodePoint(
  ...ranges.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, i) => from + i)), ...singles);
const keepFeatures = ['kern', 'liga', 'lnum', 'tnum', 'locl', 'ccmp', 'mark', 'mkmk'];

function renamed(font, family, style) {
  const count = font.readUInt16BE(4);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = 12 + 16 * i;
    const offset = font.readUInt32BE(at + 8);
    return { tag: font.toString('latin1', at, at + 4), data: font.subarray(offset, offset + font.readUInt32BE(at + 12)) };
  });
  const names = tables.find((table) => table.tag === 'name');
  names.data = nameTable(names.data, family, style);
  return assembled(font.readUInt32BE(0), tables);
}

function nameTable(old, family, style) {
  const words = new Map([[1, `${family} ${style}`], [2, 'Regular'], [3, `${family} ${style}, cut to Latin`],
    [4, `${family} ${style}`], [6, `${family}-${style}`.replaceAll(' ', '')], [16, family], [17, style]]);
  for (const kept of [0, 13, 14]) {
    const text = nameOf(old, kept);
    if (text) words.set(kept, text);
  }
  const records = [...words].sort(([a], [b]) => a - b).map(([id, text]) => [id, Buffer.from(text, 'utf16le').swap16()]);
  const head = Buffer.alloc(6 + 12 * records.length);
  head.writeUInt16BE(records.length, 2);
  head.writeUInt16BE(head.length, 4);
  let offset = 0;
  records.forEach(([id, text], i) => {
    [3, 1, 0x409, id, text.length, offset].forEach((value, j) => head.writeUInt16BE(value, 6 + 12 * i + 2 * j));
    offset += text.length;
  });
  return Buffer.concat([head, ...records.map(([, text]) => text)]);
}

function nameOf(table, wanted) {
  const storage = table.readUInt16BE(4);
  for (let i = 0; i < table.readUInt16BE(2); i++) {
    const [platform, , , id, length, offset] = Array.from({ length: 6 }, (_, j) => table.readUInt16BE(6 + 12 * i + 2 * j));
    if (platform === 3 && id === wanted) {
      return Buffer.from(table.subarray(storage + offset, storage + offset + length)).swap16().toString('utf16le');
    }
  }
  return null;
}

function assembled(version, tables) {
  const padded = (data) => Buffer.concat([data, Buffer.alloc((4 - (data.length % 4)) % 4)]);
  const sum = (data) => { let s = 0; for (let i = 0; i < data.length; i += 4) s = (s + data.readUInt32BE(i)) >>> 0; return s; };
  const head = Buffer.alloc(12 + 16 * tables.length);
  const power = 2 ** Math.floor(Math.log2(tables.length));
  head.writeUInt32BE(version, 0);
  [tables.length, power * 16, Math.log2(power), (tables.length - power) * 16].forEach((v, i) => head.writeUInt16BE(v, 4 + 2 * i));
  let offset = head.length;
  const bodies = tables.map(({ tag, data }, i) => {
    const body = padded(data);
    if (tag === 'head') body.writeUInt32BE(0, 8);
    head.write(tag, 12 + 16 * i, 'latin1');
    head.writeUInt32BE(sum(body), 16 + 16 * i);
    head.writeUInt32BE(offset, 20 + 16 * i);
    head.writeUInt32BE(data.length, 24 + 16 * i);
    offset += body.length;
    return body;
  });
  const font = Buffer.concat([head, ...bodies]);
  const at = tables.findIndex(({ tag }) => tag === 'head');
  font.writeUInt32BE((0xb1b0afba - sum(font)) >>> 0, head.readUInt32BE(20 + 16 * at) + 8);
  return font;
}

for (const [source, file, family, style] of faces) {
  const cut = await subset(await readFile(join(modules, source)), characters, {
    targetFormat: 'truetype', keepFeatures, noHinting: true, preserveNameIds: [0, 13, 14],
  });
  const woff2 = await fontverter.convert(renamed(Buffer.from(cut), family, style), 'woff2');
  await writeFile(join(out, `${file}.woff2`), woff2);
  console.log(file, woff2.length);
}

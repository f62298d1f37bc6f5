"use strict";
// What a typed complaint means: its kind by the table of words, its code, and its stems. The same rules as the program's own.
const Words = (() => {
  const data = JSON.parse(document.getElementById("lookup-data").textContent);
  // Plain letters; articles that French and Italian write with the next word are left out.
  const plain = word => word.replace(/[^\x00-\x7f]/g, c => ({ "\u00df": "ss", "\u00e6": "ae", "\u0153": "oe", "\u00f8": "o", "\u0142": "l", "\u0111": "d" })[c] || c.normalize("NFD").replace(/\p{M}/gu, ""));
  const elided = /(?<![\p{L}\p{Nd}])(?:[cdjlmnst]|qu|un|dell|nell|dall|all|sull)['\u2019\u00b4`]/giu;
  const split = text => (text.replace(elided, "").replace(/['\u2019\u00b4`]/g, "").match(/[\p{L}\p{Nd}]+/gu) || []).map(w => plain(w.slice(0, 64).toLowerCase()));

  // Slips between two words: a letter too many, too few, wrong, or two neighbours swapped.
  function slips(a, b) {
    let two = [], one = Array.from({ length: b.length + 1 }, (_, j) => j);
    for (let i = 1; i <= a.length; i++) {
      const row = [i];
      for (let j = 1; j <= b.length; j++) {
        row[j] = Math.min(row[j - 1] + 1, one[j] + 1, one[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) row[j] = Math.min(row[j], two[j - 2] + 1);
      }
      [two, one] = [one, row];
    }
    return one[b.length];
  }

  const within = (a, b, most) => Math.abs(a.length - b.length) <= most && slips(a, b) <= most;
  const swapped = (typed, known) => {
    if (typed.length !== known.length) return false;
    let i = 0;
    while (i < known.length && typed[i] === known[i]) i++;
    return i + 1 < known.length && typed[i] === known[i + 1] && typed[i + 1] === known[i] && typed.slice(i + 2) === known.slice(i + 2);
  };
  const doubled = (typed, known) => {
    let i = 0;
    while (i < known.length && typed[i] === known[i]) i++;
    return typed.length === known.length + 1 && i > 0 && typed[i] === typed[i - 1] && typed.slice(i + 1) === known.slice(i);
  };
  const close = (typed, known) => {
    const most = known.length < 5 ? 0 : known.length < 9 ? 1 : 2;
    return (most > 0 && typed[0] === known[0] && within(typed, known, most)) || (known.length >= 4 && (swapped(typed, known) || doubled(typed, known)));
  };
  const near = (typed, known) => known.length >= 3 && typed.length >= 2 && within(typed, known, 1);

  // Table words that one typed word can be; a word that tables or everyday speech know is itself.
  const stems = [...new Set(data.phrases.flatMap(p => p.words))];
  const common = new Set(data.commonWords);
  function fits(typed, known, test) {
    if (!known.endsWith("*")) return test(typed, known);
    const root = known.slice(0, -1);
    for (let length = Math.max(1, root.length - 1); length <= Math.min(typed.length, root.length + 1); length++) {
      if (test(typed.slice(0, length), root)) return true;
    }
    return false;
  }
  function match(word) {
    const typed = data.shortWords[word] || word;
    const exact = new Set(stems.filter(s => s.endsWith("*") ? typed.startsWith(s.slice(0, -1)) : s === typed));
    if (exact.size > 0 || common.has(typed) || /[0-9]/.test(typed)) return { exact, close: new Set(), near: new Set() };
    return { exact, close: new Set(stems.filter(s => fits(typed, s, close))), near: new Set(stems.filter(s => fits(typed, s, near))) };
  }

  function matches(words, at, phrase, tolerant) {
    if (at + phrase.words.length > words.length) return false;
    let right = 0, almost = 0;
    for (let i = 0; i < phrase.words.length; i++) {
      const word = words[at + i], known = phrase.words[i];
      if (word.exact.has(known)) right++;
      else if (!tolerant || (!word.close.has(known) && (!word.near.has(known) || ++almost > 1))) return false;
    }
    return almost === 0 || right > 0;
  }

  // "Not noisy" is no noise; a phrase that holds such a word itself means what it says.
  const before = new Set(data.negations.before), between = new Set(data.negations.between), after = new Set(data.negations.after);
  function denied(words, from, to) {
    let at = from - 1;
    while (at >= 0 && from - at <= 2 && between.has(words[at].typed)) at--;
    return (at >= 0 && before.has(words[at].typed)) || (to < words.length && after.has(words[to].typed));
  }

  // Longest phrase first, then the earlier in the table; a code counts only when nothing else is said.
  const phrases = data.phrases.map((p, i) => ({ ...p, order: i, denies: p.words.some(w => before.has(w) || after.has(w)) })).sort((a, b) => b.words.length - a.words.length || a.order - b.order);
  const holds = (phrase, type) => phrase.types.length === 0 || !type || phrase.types.includes(type);
  function first(words, type, tolerant) {
    let code = null;
    for (let at = 0; at < words.length; at++) {
      const found = phrases.find(p => holds(p, type) && matches(words, at, p, tolerant) && (p.denies || !denied(words, at, at + p.words.length)));
      // A phrase that hides a word of another kind: "dead battery" is not "dead".
      if (found && found.kind === "other") {
        at += found.words.length - 1;
        continue;
      }
      if (found && found.kind !== "error_code") return found.kind;
      code = code || (found ? found.kind : null);
    }
    return code;
  }

  // The exact name of a kind, such as no_ignition, is that kind.
  const names = new Set(data.phrases.map(p => p.kind));
  function kind(text, type) {
    if (names.has((text || "").trim())) return text.trim();
    const words = split(text || "").map(w => ({ typed: w, ...match(w) }));
    if (words.length === 0) return "none";
    const right = first(words, type, false);
    return (right === null || right === "error_code" ? first(words, type, true) || right : right) || "other";
  }

  function code(text) {
    if (!text || !/[0-9]/.test(text)) return null;
    const found = /\b(?:error|err|code|fault)s?\b(?:\s+(?:code|no|number))?[\s:#.-]{0,3}([A-Z]{0,2}[- ]?\d{1,3}[A-Z]?)\b/i.exec(text)
      || /(?<![\w-])([EFHUC]{1,2}[- ]?\d{1,3})(?![\w-])/i.exec(text);
    return found ? plainCode(found[1]) : null;
  }
  function plainCode(cell) {
    const plain = (cell || "").replace(/[^A-Za-z0-9]/g, "").toUpperCase();
    return plain.length > 0 && plain.length <= 12 ? plain : null;
  }

  // Stems the predictor knows: of the word itself, else of the most frequent word one slip away.
  const listed = data.weights ? data.weights.words : [], known = new Set(listed), roots = new Set(listed.map(w => w.slice(0, 5)));
  const meant = new Map();
  function find(word) {
    if (known.has(word) || (word.length >= 5 && roots.has(word.slice(0, 5)))) return word;
    if (!meant.has(word)) meant.set(word, listed.find(w => w.length >= 3 && within(w, word, 1)));
    return meant.get(word);
  }
  const stemsOf = text => [...new Set([...new Set((text || "").match(/\p{L}{3,}/gu) || [])].map(w => find(w.toLowerCase())).filter(Boolean).map(w => w.slice(0, 5)))];

  return { kind, code, plainCode, stemsOf };
})();

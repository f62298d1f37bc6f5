"use strict";
// The predictor: every fact of a call adds its weight to each need's log odds. The same facts, in the same words, as the program's own.
const Odds = (() => {
  const data = JSON.parse(document.getElementById("lookup-data").textContent);
  const bands = [[0, 2], [2, 4], [4, 6], [6, 8], [8, 10], [10, 13], [13, null]];
  const band = age => {
    const found = age === null ? null : bands.find(b => b[1] === null || age < b[1]);
    return !found ? "unknown" : found[1] === null ? found[0] + "+" : found[0] + "-" + found[1];
  };
  const logAge = years => Math.log(Math.max(years, 0.05) / 7);

  // Second reading of a complaint the table of words could not tell: how earlier complaints of each kind were worded.
  function readKind(q, stems) {
    const reader = data.weights.reader;
    if (q.kind !== "other" || reader.kinds.length === 0) return q.kind;
    const all = reader.jobs.reduce((a, b) => a + b, 0) + 1;
    const scores = reader.jobs.map(n => Math.log((n + 0.05) / all));
    for (const stem of stems) {
      const counts = reader.counts[stem];
      if (counts) counts.forEach((c, k) => { scores[k] += Math.log((c + 0.05) / (reader.jobs[k] + 0.1)); });
    }
    const top = Math.max(...scores), best = scores.indexOf(top);
    return 1 / scores.reduce((sum, s) => sum + Math.exp(s - top), 0) >= 0.8 ? reader.kinds[best] : q.kind;
  }

  function visits(list, q, kind) {
    list.push(["earlier:" + Math.min(q.earlier.length, 3), 1]);
    if (q.earlier.length === 0) return;
    const last = q.earlier[0];
    const since = last.daysAgo <= 35 ? "month" : last.daysAgo <= 180 ? "half_year" : "later";
    list.push(["since:" + since, 1]);
    if (since === "month") list.push(["since:month/" + (last.kind === kind ? "same" : "other"), 1], ["after:" + (last.need || "unknown"), 1]);
    const met = new Set();
    for (const visit of q.earlier.slice(0, 6)) {
      if (!visit.need || met.has(visit.need)) continue;
      met.add(visit.need);
      const years = visit.daysAgo / 365.25;
      const again = years < 0.1 ? "month" : years < 0.5 ? "half_year" : years < 2 ? "two_years" : "later";
      list.push(["again:" + again, 1, visit.need], ["renewed", Math.min(0, logAge(years) - logAge(q.age === null ? 7 : q.age)), visit.need]);
    }
  }

  function facts(q) {
    const stems = Words.stemsOf(q.text), kind = readKind(q, stems);
    const list = [["type:" + q.type, 1], ["kind:" + kind, 1], ["kind:" + kind + "/" + q.type, 1]];
    if (q.brand) list.push(["brand:" + q.brand + "/" + q.type, 1]);
    if (q.family) {
      list.push(["family:" + q.family, 1], ["family:" + q.family + "/" + kind, 1]);
      if (q.made && q.age !== null && q.age < 4) {
        const [year, month] = q.made.split("-").map(Number);
        list.push(["built:" + q.family + "/" + year, 1], ["built:" + q.family + "/" + year + "-" + Math.floor((month + 2) / 3), 1]);
      }
      if (q.model) list.push(["model:" + q.model, 1]);
    }
    if (q.age !== null) {
      const log = logAge(q.age);
      list.push(["log_age", log], ["log_age/" + q.type, log], ["log_age/" + kind, log]);
      if (q.age < 1) list.push(["young/" + kind + "/" + q.type, 1]);
    }
    const turn = 2 * Math.PI * (q.month - 0.5) / 12;
    list.push(["age:" + band(q.age) + "/" + q.type, 1], ["summer", -Math.cos(turn)], ["spring", Math.sin(turn)]);
    list.push(["customer:" + q.customer, 1], ["customer:" + q.customer + "/" + q.type, 1]);
    if (q.code) list.push(["code:" + q.code, 1], ["code:" + q.code + "/" + q.type + "/" + (q.brand || ""), 1]);
    visits(list, q, kind);
    const unread = kind === "other" || kind === "none";
    stems.forEach(s => list.push([unread ? "unread:" + s + "/" + q.type : "word:" + s, 1]));
    return list;
  }

  function summed(q) {
    const w = data.weights, n = data.needs.length, scores = new Array(n).fill(0);
    const of = (row, k) => {
      for (let i = 0; row && i < row.length; i += 2) if (row[i] === k) return row[i + 1] / w.scale;
      return 0;
    };
    for (const [key, value, only] of facts(q)) {
      const row = w.facts[key];
      if (only) {
        const k = data.needs.indexOf(only);
        if (k >= 0) scores[k] += value * (of(row, k) + of(w.facts[key + "/any"], 0));
      } else {
        for (let i = 0; row && i < row.length; i += 2) scores[row[i]] += value * row[i + 1] / w.scale;
      }
    }
    const allowed = w.allowed[q.type] || data.needs.map((_, k) => k);
    const top = Math.max(...allowed.map(k => scores[k]));
    const odds = new Array(n).fill(0);
    let sum = 0;
    allowed.forEach(k => { odds[k] = Math.exp(scores[k] - top); sum += odds[k]; });
    const mixed = odds.map((o, k) => (1 - w.backgroundShare) * o / sum + w.backgroundShare * w.background[k]);
    const warm = w.temperature === 1 ? mixed : mixed.map(p => Math.pow(p, 1 / w.temperature));
    const total = warm.reduce((a, b) => a + b, 0);
    return warm.map(p => p / total);
  }

  // Where the predictor is no sum of weights: its answers to the typical call of each family and kind.
  function tabled(q) {
    const row = (q.family && data.tables[q.family + "/" + q.kind]) || data.tables[q.type + "/" + q.kind] || data.tables[q.type + "/none"];
    return row ? row.map(p => p / 1000) : null;
  }

  return { of: q => data.weights ? summed(q) : tabled(q) };
})();

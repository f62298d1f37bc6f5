"use strict";
(() => {
  const data = JSON.parse(document.getElementById("lookup-data").textContent);
  const el = id => document.getElementById(id);
  const question = { model: null, family: null, kind: "none", text: "" };
  const words = stored => stored === "none" ? "no part needed" : stored === "other_part" ? "another part" : stored.replaceAll("_", " ");
  const compact = text => text.toUpperCase().replace(/[^A-Z0-9]/g, "");
  const alike = text => compact(text).replace(/O/g, "0").replace(/[IL]/g, "1");

  const make = (tag, text, className) => {
    const node = document.createElement(tag);
    if (text) node.textContent = text;
    if (className) node.className = className;
    return node;
  };

  // The same facts, in the same words, as the program's own predictor.
  const stems = text => [...new Set((text.match(/\p{L}{3,}/gu) || []).map(w => w.slice(0, 5).toLowerCase()))];
  const bands = [[0, 2], [2, 4], [4, 6], [6, 8], [8, 10], [10, 13], [13, null]];
  const band = age => {
    const found = age === null ? null : bands.find(b => b[1] === null || age < b[1]);
    return !found ? "unknown" : found[1] === null ? found[0] + "+" : found[0] + "-" + found[1];
  };

  function facts(q) {
    const list = [["type:" + q.type, 1], ["kind:" + q.kind, 1], ["kind:" + q.kind + "/" + q.type, 1]];
    if (q.brand) list.push(["brand:" + q.brand + "/" + q.type, 1]);
    if (q.family) {
      list.push(["family:" + q.family, 1], ["family:" + q.family + "/" + q.kind, 1]);
      if (q.model) list.push(["model:" + q.model, 1]);
    }
    if (q.age !== null) {
      const log = Math.log(Math.max(q.age, 0.05) / 7);
      list.push(["log_age", log], ["log_age/" + q.type, log], ["log_age/" + q.kind, log]);
      if (q.age < 1) list.push(["young/" + q.kind + "/" + q.type, 1]);
    }
    const turn = 2 * Math.PI * (q.month - 0.5) / 12;
    list.push(["age:" + band(q.age) + "/" + q.type, 1], ["summer", -Math.cos(turn)], ["spring", Math.sin(turn)]);
    list.push(["customer:household", 1], ["customer:household/" + q.type, 1], ["earlier:0", 1]);
    const unread = q.kind === "other" || q.kind === "none";
    stems(q.text).forEach(s => list.push([unread ? "unread:" + s + "/" + q.type : "word:" + s, 1]));
    return list;
  }

  function summed(q) {
    const w = data.weights, n = data.needs.length, scores = new Array(n).fill(0);
    for (const [key, value] of facts(q)) {
      const row = w.facts[key];
      for (let i = 0; row && i < row.length; i += 2) scores[row[i]] += value * row[i + 1] / w.scale;
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

  function tabled(q) {
    const row = (q.family && data.tables[q.family + "/" + q.kind]) || data.tables[q.type + "/" + q.kind] || data.tables[q.type + "/none"];
    return row ? row.map(p => p / 1000) : null;
  }

  const odds = q => data.weights ? summed(q) : tabled(q);
  window.lookupOdds = q => odds(q);

  function findModels(typed) {
    const key = alike(typed);
    if (key.length < 2) return [];
    const families = new Map(data.models.map(m => [m.family, { number: "", family: m.family, type: m.type, brand: m.brand }]));
    const rank = m => {
      const own = alike(m.number || m.family), full = alike((m.brand || "") + (m.number || m.family));
      return own === key ? 0 : own.startsWith(key) ? 1 : own.includes(key) ? 2 : full.includes(key) ? 3 : 9;
    };
    return [...families.values(), ...data.models].map(m => [rank(m), m]).filter(r => r[0] < 9)
      .sort((a, b) => a[0] - b[0] || (a[1].number < b[1].number ? -1 : 1)).slice(0, 8).map(r => r[1]);
  }

  function findKinds(typed, type) {
    const asked = typed.toLowerCase().match(/[\p{L}\p{N}]{2,}/gu) || [];
    const open = data.kinds.filter(k => !type || k.types.length === 0 || k.types.includes(type));
    if (asked.length === 0) return type ? open.slice(0, 12) : [];
    const score = k => {
      const known = k.words.split(" ");
      return asked.reduce((sum, a) => sum + (known.some(w => w.startsWith(a) || (w.length >= 4 && a.startsWith(w))) ? 1 : 0), 0);
    };
    return open.map((k, i) => [score(k), i, k]).filter(s => s[0] > 0).sort((a, b) => b[0] - a[0] || a[1] - b[1]).slice(0, 8).map(s => s[2]);
  }

  function choices(place, items, label, picked, pick) {
    const list = el(place);
    list.replaceChildren(...items.map(item => {
      const button = make("button", label(item));
      button.type = "button";
      button.setAttribute("aria-pressed", String(picked(item)));
      button.addEventListener("click", () => pick(item));
      return button;
    }));
  }

  const type = () => (question.picked && question.picked.type) || el("type").value || "unknown";

  function listModels() {
    const label = m => [m.brand, m.number || "family " + m.family, m.number ? "(" + m.family + ")" : "", m.type].filter(Boolean).join(" ");
    choices("model-list", question.picked ? [question.picked] : findModels(el("model").value), label, m => m === question.picked, m => {
      question.picked = question.picked === m ? null : m;
      if (question.picked) el("model").value = m.number || m.family;
      refresh();
    });
  }

  function listKinds() {
    const known = type() === "unknown" ? "" : type();
    const items = question.kindPicked ? [question.kindPicked] : findKinds(el("complaint").value, known);
    choices("complaint-list", items, k => words(k.kind), k => k === question.kindPicked, k => {
      question.kindPicked = question.kindPicked === k ? null : k;
      refresh();
    });
  }

  function part(p) {
    const line = make("p", "", "part");
    line.append(make("span", (p.quantity > 1 ? p.quantity + " x " : "") + p.number, "number"));
    const rest = [p.text, p.made ? "" : "no longer made", p.price === undefined ? "" : p.price.toFixed(2) + " " + data.currency,
      p.seen > 0 ? "fitted " + p.seen + " times on the family" : "listed, not yet fitted here",
      p.old.length ? "replaces " + p.old.join(", ") : "",
      p.vans.length ? p.vans.map(v => "van " + v.van + " has " + v.pieces).join(", ") : "on no van"];
    line.append(" " + rest.filter(Boolean).join("; "));
    return line;
  }

  // The part most used on this very model comes first, then the one most used on the family.
  function partsFor(q, need) {
    const used = (q.model && data.onModel[q.model]) || {};
    return (data.parts[q.family + "/" + need] || []).map((p, i) => [p, i]).sort((a, b) =>
      (b[0].made - a[0].made) || ((used[b[0].number] || 0) - (used[a[0].number] || 0)) || (a[1] - b[1])).map(r => r[0]);
  }

  function bar(share) {
    const box = make("div", "", "bar"), ns = "http://www.w3.org/2000/svg";
    const svg = document.createElementNS(ns, "svg"), rect = document.createElementNS(ns, "rect");
    svg.setAttribute("viewBox", "0 0 100 8");
    svg.setAttribute("preserveAspectRatio", "none");
    svg.setAttribute("aria-hidden", "true");
    rect.setAttribute("width", (share * 100).toFixed(1));
    rect.setAttribute("height", "8");
    rect.setAttribute("fill", "#0b4f7a");
    svg.append(rect);
    box.append(svg);
    return box;
  }

  function showNeeds(out, q, shares) {
    const ranked = shares.map((p, k) => [p, k]).filter(r => r[0] >= 0.02).sort((a, b) => b[0] - a[0] || a[1] - b[1]).slice(0, 8);
    out.append(make("h3", "What it will need"));
    for (const [p, k] of ranked) {
      const box = make("div", "", "need"), head = make("p");
      head.append(make("span", Math.round(p * 100) + " %", "odds"), " " + words(data.needs[k]) + (p >= 0.4 ? ", usual" : p >= 0.1 ? ", possible" : ", rare"));
      box.append(head, bar(p));
      partsFor(q, data.needs[k]).slice(0, 2).forEach(x => box.append(part(x)));
      out.append(box);
    }
    const rest = 1 - ranked.reduce((sum, r) => sum + r[0], 0);
    if (rest >= 0.005) out.append(make("p", Math.round(rest * 100) + " % anything else", "basis"));
  }

  function showChecks(out, q) {
    const plan = (q.family && data.plans[q.family + "/" + q.kind]) || data.plans[q.type + "/" + q.kind];
    if (!plan) return;
    const steps = plan.map(i => data.checks[i]), list = make("ol");
    [...new Set(steps.map(s => s.caution).filter(Boolean))].forEach(c => out.append(make("p", c, "caution")));
    out.append(make("h3", "Check in this order"));
    for (const s of steps) {
      const item = make("li");
      item.append(make("div", s.what + " (" + s.minutes + " min" + (s.tool ? ", " + s.tool : "") + ")" + (s.opening ? " \u2013 open: " + s.opening : "")));
      if (s.good) item.append(make("div", "good: " + s.good, "basis"));
      if (s.bad) item.append(make("div", "bad: " + s.bad, "basis"));
      list.append(item);
    }
    out.append(list);
  }

  function answer() {
    const out = el("answer"), picked = question.picked, age = el("age").value === "" ? null : Number(el("age").value);
    out.replaceChildren();
    if (!picked && type() === "unknown" || !question.kindPicked) {
      out.append(make("p", "Pick a model (or an appliance) and a complaint.", "basis"));
      return;
    }
    const q = {
      type: type(), brand: picked && picked.brand, family: picked && picked.family, model: picked && picked.number,
      kind: question.kindPicked.kind, text: el("complaint").value.trim() || words(question.kindPicked.kind),
      age: age !== null && age >= 0 && age <= 80 ? age : null, month: new Date().getMonth() + 1
    };
    const shares = odds(q);
    out.append(make("p", [picked && picked.brand, picked ? picked.number || "family " + picked.family : "", q.type, words(q.kind)].filter(Boolean).join(", ") + ".", "basis"));
    out.append(make("p", "Before opening the cabinet: disconnect power and water, and prove it dead.", "caution"));
    if (!shares) {
      out.append(make("p", "Too few jobs to say."));
      return;
    }
    showNeeds(out, q, shares);
    showChecks(out, q);
  }

  function refresh() {
    listModels();
    listKinds();
    answer();
  }

  el("model").addEventListener("input", () => { question.picked = null; refresh(); });
  el("complaint").addEventListener("input", () => { question.kindPicked = null; refresh(); });
  el("type").addEventListener("change", refresh);
  el("age").addEventListener("input", refresh);
  el("clear").addEventListener("click", () => {
    el("question").reset();
    question.picked = question.kindPicked = null;
    refresh();
    el("model").focus();
  });
  for (const [field, list] of [["model", "model-list"], ["complaint", "complaint-list"]]) {
    el(field).addEventListener("keydown", event => {
      if (event.key !== "Enter") return;
      event.preventDefault();
      const first = el(list).querySelector("button[aria-pressed=false]");
      if (first) first.click();
    });
  }
  el("question").addEventListener("submit", event => event.preventDefault());
  const days = Math.floor((Date.now() - Date.parse(data.asOf)) / 86400000);
  if (days > 45) {
    el("stale").hidden = false;
    el("stale").textContent = "This data is " + days + " days old. Odds, prices and van contents may have moved; make a new run.";
  }
  refresh();
})();

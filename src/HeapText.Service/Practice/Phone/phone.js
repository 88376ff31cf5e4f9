"use strict";

const at = id => document.getElementById(id);
const saved = { numbers: "heaptext.numbers", chosen: "heaptext.chosen" };
const village = Array.from({ length: 24 }, (_, i) => `+999100000${String(i + 1).padStart(2, "0")}`);
const hour = { hour: "2-digit", minute: "2-digit" };
const moment = { weekday: "short", day: "numeric", month: "short", ...hour };
const refreshEvery = 2000;
const mostWakes = 100;

let numbers = [...new Set([...village, ...JSON.parse(localStorage.getItem(saved.numbers) ?? "[]")])];
let chosen = localStorage.getItem(saved.chosen) ?? numbers[0];
if (!numbers.includes(chosen)) chosen = numbers[0];
let shown = "";
let unsent = null;
let counting = 0;
let zone = "UTC";
let materials = [];
let listed = "";

async function ask(path, body) {
  const answer = await fetch(path, body === undefined ? {} : {
    method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body),
  });
  const json = await answer.json();
  if (!answer.ok) throw new Error(json.detail ?? json.title);
  return json;
}

const spaced = number => number.replace(/^(\+999)(\d{3})(\d{3})(\d+)$/, "$1 $2 $3 $4");
// Everything happens in the village, so its time is shown wherever the browser stands.
const local = (iso, form = moment) => new Intl.DateTimeFormat("en-GB", { ...form, timeZone: zone }).format(new Date(iso));
const texts = count => count === 1 ? "1 text" : `${count} texts`;

function element(name, text, ...children) {
  const made = document.createElement(name);
  if (text) made.textContent = text;
  made.append(...children);
  return made;
}

function showNumbers() {
  at("number").replaceChildren(...numbers.map(number => new Option(spaced(number), number, false, number === chosen)));
}

function choose(number) {
  chosen = number;
  localStorage.setItem(saved.chosen, number);
  shown = "";
  at("thread").replaceChildren();
  return refresh();
}

function showThread(messages) {
  const state = JSON.stringify(messages);
  if (state === shown) return;
  const before = at("thread").childElementCount;
  shown = state;
  // Only what is new is added, so that a screen reader reads only that.
  const isSame = before <= messages.length && messages.slice(0, before)
    .every((message, i) => at("thread").children[i].dataset.n === String(message.n));
  if (!isSame) at("thread").replaceChildren();
  for (const message of messages.slice(isSame ? before : 0)) {
    const line = element("li", "", element("span", message.text),
      element("small", `${local(message.at)}${message.way === "out" ? ` · ${texts(message.segments)}` : ""}`));
    line.className = message.way;
    line.dataset.n = message.n;
    at("thread").append(line);
  }
  showEnd();
}

function showEnd() {
  at("thread").scrollTop = at("thread").scrollHeight;
}

async function showVillage() {
  const village = await ask("/practice/village");
  materials = await ask("/practice/materials");
  zone = village.zone;
  at("codes").replaceChildren(...village.groups.map(group => element("li", `${group.code}: ${group.name}`)));
}

const reasons = {
  urgent: "burn, fire or illness",
  person: "asks to talk",
  erase: "wants the data deleted",
  misread: "texts not understood",
  overdue: "heap left unturned",
  use: "asks how much for a crop",
  "service-fault": "a fault of the service",
  trouble: "a fault that came back",
  "unknown-word": "a word nobody knows",
};

function wordForm({ district, language, word }) {
  const form = element("form", "");
  const name = `word-${district}-${word}`;
  const label = element("label", `What is “${word}” in district ${district}?`);
  const choice = element("select", "", new Option("choose…", ""), new Option("nothing: leave it out", "none"),
    ...materials.map(m => new Option(m.refused ? `${m.name} (never goes in)` : m.name, m.key)));
  const fault = element("p", "");
  form.className = "word";
  [label.htmlFor, choice.id] = [name, name];
  choice.required = true;
  fault.className = "fault";
  fault.setAttribute("role", "alert");
  form.append(label, choice, element("button", "Explain"), fault);
  form.addEventListener("submit", async event => {
    event.preventDefault();
    try {
      await ask("/practice/words", { district, language, word, material: choice.value });
      at("explained").textContent = `“${word}” is known in district ${district} from now on.`;
      await refreshQuietly();
    } catch (problem) {
      fault.textContent = problem.message;
    }
  });
  return form;
}

function showConcerns(concerns) {
  const state = JSON.stringify(concerns);
  if (state === listed) return;
  listed = state;
  at("no-concerns").hidden = concerns.length > 0;
  at("concerns").replaceChildren(...concerns.map(open => element("li", open.number,
    element("small", [open.village, reasons[open.reason] ?? open.reason, `since ${local(open.since)}`].filter(Boolean).join(" · ")),
    ...open.words.map(wordForm))));
}

async function refresh() {
  const number = chosen;
  const [thread, clock, next, concerns] = await Promise.all([
    ask(`/practice/thread?number=${encodeURIComponent(number)}`),
    ask("/practice/clock"), ask("/practice/next"), ask("/practice/concerns"),
  ]);
  if (number === chosen) showThread(thread);
  at("clock").textContent = local(clock.now, { ...moment, year: "numeric" });
  at("clock").dateTime = clock.now;
  at("next").textContent = next.at ? `Next falls due ${local(next.at)}.` : "Nothing is waiting.";
  document.querySelector("[data-move=next]").disabled = !next.at;
  showConcerns(concerns);
}

async function refreshQuietly() {
  try {
    await refresh();
    at("moved").textContent = at("moved").dataset.lost ? "" : at("moved").textContent;
    delete at("moved").dataset.lost;
  } catch {
    at("moved").textContent = "The service does not answer. Is it running?";
    at("moved").dataset.lost = "yes";
  }
}

async function showCount() {
  const text = at("text").value;
  const { units, segments, most } = await ask("/practice/fit", { text });
  if (text === at("text").value) at("count").textContent = `${units}/${most} · ${texts(segments)}`;
}

function countSoon() {
  clearTimeout(counting);
  counting = setTimeout(() => showCount().catch(() => {}), 120);
}

async function send(event) {
  event.preventDefault();
  const text = at("text").value;
  if (!text.trim()) return at("text").focus();
  // A send that failed keeps its id, so that sending again cannot count twice.
  if (unsent?.text !== text || unsent.from !== chosen)
    unsent = { id: crypto.randomUUID(), from: chosen, to: "practice", text };
  at("send").disabled = true;
  at("send-fault").textContent = "";
  try {
    await ask("/sms/practice", unsent);
    unsent = null;
    at("text").value = "";
    countSoon();
    await refreshQuietly();
  } catch (fault) {
    at("send-fault").textContent = `Not sent: ${fault.message}`;
  } finally {
    at("send").disabled = false;
    at("text").focus();
  }
}

// Other phones wake in between, and not every wake has something to say.
async function moveToNext() {
  const number = encodeURIComponent(chosen);
  const last = (await ask(`/practice/messages?to=${number}`)).at(-1)?.n ?? 0;
  for (let wake = 0; wake < mostWakes; wake++) {
    const [next, clock] = await Promise.all([ask("/practice/next"), ask("/practice/clock")]);
    if (!next.at) break;
    const seconds = Math.max(Math.ceil((new Date(next.at) - new Date(clock.now)) / 1000), 1);
    const { now } = await ask("/practice/clock", { advance: `PT${seconds}S` });
    if ((await ask(`/practice/messages?to=${number}&after=${last}`)).length > 0) return `It is now ${local(now)}.`;
  }
  return "Nothing is waiting for this phone.";
}

async function moveBy(duration) {
  const { now } = await ask("/practice/clock", { advance: duration });
  return `It is now ${local(now)}.`;
}

async function move(event) {
  const way = event.target.dataset.move;
  if (!way) return;
  const buttons = [...at("moves").querySelectorAll("button")];
  buttons.forEach(button => { button.disabled = true; });
  at("moved").textContent = "Moving the clock…";
  try {
    at("moved").textContent = await (way === "next" ? moveToNext() : moveBy(way));
  } catch (fault) {
    at("moved").textContent = `The clock was not moved: ${fault.message}`;
  } finally {
    buttons.forEach(button => { button.disabled = false; });
    await refreshQuietly();
    event.target.focus();
  }
}

function addNumber(event) {
  event.preventDefault();
  const number = at("new-number").value.replace(/[\s-]/g, "");
  if (!/^\+999\d{4,12}$/.test(number)) {
    at("number-fault").textContent = "Write +999 and 4 to 12 more digits.";
    return at("new-number").focus();
  }
  at("number-fault").textContent = "";
  if (!numbers.includes(number)) numbers.push(number);
  localStorage.setItem(saved.numbers, JSON.stringify(numbers.filter(one => !village.includes(one))));
  showAdding(false);
  chosen = number;
  showNumbers();
  at("number").focus();
  return choose(number).catch(refreshQuietly);
}

function showAdding(open) {
  at("adding").hidden = !open;
  at("add").setAttribute("aria-expanded", String(open));
  if (open) at("new-number").focus();
}

at("number").addEventListener("change", event => choose(event.target.value).catch(refreshQuietly));
at("add").addEventListener("click", () => showAdding(at("adding").hidden));
at("adding").addEventListener("submit", addNumber);
at("writing").addEventListener("submit", send);
at("text").addEventListener("input", countSoon);
at("text").addEventListener("keydown", event => {
  if (event.key === "Enter" && !event.shiftKey && !event.isComposing) send(event);
});
at("moves").addEventListener("click", move);
new ResizeObserver(showEnd).observe(at("thread"));
showNumbers();
countSoon();
showVillage().catch(() => {}).then(refreshQuietly);
setInterval(refreshQuietly, refreshEvery);

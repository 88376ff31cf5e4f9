"use strict";

// A dialled session: each entry is one step, and a step that failed is sent again as the same step.
const code = "*384#";
let session = null;

function showDialled(open) {
  const isOn = session !== null;
  document.querySelector(".screen").classList.toggle("dials", isOn);
  at("dialled").hidden = !isOn;
  at("writing").hidden = isOn;
  at("dialling").hidden = isOn;
  at("entering").hidden = !isOn;
  at("entry").hidden = !open;
  document.querySelector("label[for=entry]").hidden = !open;
  at("enter").hidden = !open;
  at("hang-up").textContent = open ? "Hang up" : "Close";
}

async function step(input) {
  const running = session;
  at("enter").disabled = true;
  at("dial-fault").textContent = "";
  try {
    const { text, open } = await ask("/ussd/practice", {
      session: running.id, from: running.from, code, input, step: running.step,
    });
    if (running !== session) return;
    running.step++;
    at("shown").textContent = text;
    at("entry").value = "";
    at("dialled").scrollTop = 0;
    showDialled(open);
    at(open ? "entry" : "hang-up").focus();
    await refreshQuietly();
  } catch (fault) {
    at("dial-fault").textContent = `No answer: ${fault.message}`;
  } finally {
    at("enter").disabled = false;
  }
}

function hangUp() {
  session = null;
  at("shown").textContent = "";
  at("dial-fault").textContent = "";
  showDialled(false);
  showEnd();
}

async function ring() {
  at("ring").disabled = true;
  at("dial-fault").textContent = "";
  try {
    await ask("/calls/practice", { id: crypto.randomUUID(), from: chosen });
    await refreshQuietly();
  } catch (fault) {
    at("dial-fault").textContent = `Not rung: ${fault.message}`;
  } finally {
    at("ring").disabled = false;
    at("ring").focus();
  }
}

at("ring").addEventListener("click", ring);
at("dial").addEventListener("click", () => {
  session = { id: crypto.randomUUID(), from: chosen, step: 1 };
  at("shown").textContent = "Dialling…";
  showDialled(true);
  step("");
});
at("entering").addEventListener("submit", event => {
  event.preventDefault();
  step(at("entry").value);
});
at("hang-up").addEventListener("click", () => {
  hangUp();
  at("dial").focus();
});
at("number").addEventListener("change", hangUp);

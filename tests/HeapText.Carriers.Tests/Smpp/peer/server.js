// A message centre for tests, over the npm package "smpp". It binds whoever comes, takes messages, answers them out of
// order, turns some away as too fast, hangs up now and then without answering, and sends receipts, some of them twice
// and some before the answer. What it is to do stands in the environment variable PEER, as JSON. It prints one JSON
// line when it listens. A line "report" on standard input makes it print what it took, one JSON line a message in the
// order of taking, and then its counts. Any other line is a phone's message to deliver, as JSON with from and text: it
// prints the answer's status. It ends when standard input does.
'use strict';
const readline = require('node:readline');
const smpp = require('smpp');

const how = { throttleEvery: 0, dropEvery: 0, answerInGroupsOf: 1, receiptTwiceEvery: 0, receiptFirstEvery: 0,
  ...JSON.parse(process.env.PEER || '{}') };
const taken = [];
const counts = { submitted: 0, throttled: 0, dropped: 0, receipts: 0, receiptsAgain: 0, mostWaiting: 0, bound: 0 };
const receiptsOpen = new Map();
let current = null;

const every = (number, n) => n > 0 && number % n === 0;

function sendReceipt(id) {
  const receipt = receiptsOpen.get(id);
  if (!receipt || !current) return;
  counts.receipts++;
  current.deliver_sm({
    source_addr_ton: 1, source_addr_npi: 1, source_addr: receipt.to, destination_addr: '3344', esm_class: 4,
    short_message: `id:${id} sub:001 dlvrd:001 submit date:2603020600 done date:2603020601 stat:DELIVRD err:000`,
  }, (answer) => { if (answer.command_status === 0) receiptsOpen.delete(id); });
}

function take(session, pdu) {
  const id = (0xA000 + taken.length).toString(16).toUpperCase();
  taken.push({ id, to: pdu.destination_addr, text: pdu.short_message.message, mark: pdu.user_message_reference });
  receiptsOpen.set(id, { to: pdu.destination_addr });
  return id;
}

function answerAll(session) {
  clearTimeout(session.timer);
  session.timer = null;
  for (const { pdu, id } of session.waiting.splice(0).reverse()) {
    session.unanswered--;
    if (every(taken.length, how.receiptFirstEvery)) sendReceipt(id);
    session.send(pdu.response({ message_id: id }));
    sendReceipt(id);
    if (every(parseInt(id, 16), how.receiptTwiceEvery)) { counts.receiptsAgain++; sendReceipt(id); }
  }
}

function onSubmit(session, pdu) {
  const number = ++counts.submitted;
  counts.mostWaiting = Math.max(counts.mostWaiting, ++session.unanswered);
  if (every(number, how.throttleEvery)) {
    counts.throttled++;
    session.unanswered--;
    session.send(pdu.response({ command_status: smpp.ESME_RTHROTTLED }));
    return;
  }
  const id = take(session, pdu);
  if (every(number, how.dropEvery)) {
    // Taken, and never said so: what waits for its answer is lost with it.
    counts.dropped++;
    session.destroy();
    return;
  }
  session.waiting.push({ pdu, id });
  if (session.waiting.length >= how.answerInGroupsOf) answerAll(session);
  else session.timer ??= setTimeout(() => answerAll(session), 2);
}

const server = smpp.createServer((session) => {
  Object.assign(session, { waiting: [], unanswered: 0, timer: null });
  session.on('bind_transceiver', (pdu) => {
    counts.bound++;
    session.send(pdu.response({ system_id: 'peer' }));
    current = session;
    for (const id of receiptsOpen.keys()) sendReceipt(id);
  });
  session.on('submit_sm', (pdu) => { if (!session.socket.destroyed) onSubmit(session, pdu); });
  session.on('enquire_link', (pdu) => session.send(pdu.response()));
  session.on('unbind', (pdu) => { session.send(pdu.response()); session.close(); });
  session.on('close', () => { clearTimeout(session.timer); if (current === session) current = null; });
  session.on('error', () => session.destroy());
});

server.listen(0, '127.0.0.1', () => console.log(JSON.stringify({ port: server.address().port })));

function deliver({ from, text }) {
  current.deliver_sm({
    source_addr_ton: 1, source_addr_npi: 1, source_addr: from, destination_addr: '3344', short_message: text,
  }, (answer) => console.log(JSON.stringify({ status: answer.command_status })));
}

const commands = readline.createInterface({ input: process.stdin });
commands.on('line', (line) => {
  if (line !== 'report') return deliver(JSON.parse(line));
  for (const one of taken) console.log(JSON.stringify(one));
  console.log(JSON.stringify({ ...counts, taken: taken.length, receiptsOpen: receiptsOpen.size }));
});
commands.on('close', () => process.exit(0));

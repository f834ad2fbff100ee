// Requests to the table. Everything that is drawn is drawn there.

const key = location.pathname.split("/")[1];

/** A refusal that a person should read. */
export class Refused extends Error {
  constructor(told) {
    super(told.mistakes.map((it) => it.title).join("; "));
    this.told = told;
  }
  /** What is wrong and what to do, as one text. */
  get words() {
    return this.told.mistakes.map((it) => [it.title, ...it.help].join(". ")).join("\n");
  }
}

async function send(what, body) {
  const headers = { "content-type": "application/json", "x-breeks-key": key };
  const answer = await fetch(`ask/${what}`, { method: "POST", headers, body: JSON.stringify(body) });
  if (answer.status === 429) {
    await new Promise((done) => setTimeout(done, 120));
    return send(what, body);
  }
  if (!answer.ok) throw new Error(`the table answers ${answer.status}`);
  // A refusal is an answer like another: the browser need not report it.
  if (answer.headers.has("x-breeks-refused")) throw new Refused(await answer.json());
  return answer;
}

export const ask = async (what, body) => (await send(what, body)).json();

/** A file to take away: its bytes and the end of its name. */
export async function take(body) {
  const answer = await send("take", body);
  return { blob: await answer.blob(), ending: answer.headers.get("x-breeks-ending") };
}

export const words = async () => (await fetch("words.json")).json();

/** Runs one at a time; of those that come meanwhile only the last is run. */
export function latest(run) {
  let running = false;
  let next = null;
  return async function ask(...what) {
    next = what;
    if (running) return;
    running = true;
    try {
      while (next) {
        const now = next;
        next = null;
        await run(...now);
      }
    } finally {
      running = false;
    }
  };
}

/** Calls when the file has a new edition, and when the table is gone or back. */
export function listen(edition, reached) {
  const news = new EventSource("ask/events");
  news.addEventListener("edition", (event) => edition(Number(event.data)));
  news.addEventListener("open", () => reached(true));
  news.addEventListener("error", () => reached(false));
}

"""No file locks anybody out: a plan or a sentence for any bytes, and phone and server answer alike."""

import json
import math

import pytest

from tests.hostile import hostile_file
from webapp.errors import JobFileError
from webapp.job.file import read_job
from webapp.sheet.report import job_sheet_text, plan_as_json

FILES = 10_000
IN_ONE_TEST = 125
READ = """async (files) => {
  const { readJobFile } = await import(`${modules}keeping/transfer.js`);
  const { calculate } = await import(`${modules}sheet/sheet.js`);
  const { runningClocks } = await import(`${modules}clocks/clocks.js`);
  const { cupToResume, isBusy, nextCups } = await import(`${modules}clocks/turns.js`);
  const bytes = (text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  const answers = await Promise.all(files.map((text) => readJobFile(new Blob([bytes(text)]))));
  for (const { job } of answers) {
    if (!job) continue;
    const whole = { colours: [], ...job };
    nextCups(whole, calculate(whole));
    for (const { at } of runningClocks(whole)) new Date(at).toISOString();
    cupToResume(whole);
    isBusy(whole);
  }
  return JSON.stringify(answers);
}"""


def read_on_the_server(content):
    try:
        return {"job": read_job(content)}
    except JobFileError as error:
        return {"error": str(error)}


def no_number(name):
    raise AssertionError(f"{name} in the plan")


def finite(text):
    value = float(text)
    assert math.isfinite(value), text
    return value


@pytest.mark.long
@pytest.mark.parametrize("first", range(0, FILES, IN_ONE_TEST))
def test_any_file_is_planned_or_refused_and_alike_on_phone_and_server(phone, first):
    files = [hostile_file(seed) for seed in range(first, first + IN_ONE_TEST)]
    answers = phone.evaluate(READ, [content.decode("latin-1") for content in files])
    on_the_phone = json.loads(answers, parse_int=float)
    for seed, (content, answer) in enumerate(zip(files, on_the_phone, strict=True), first):
        own = read_on_the_server(content)
        assert answer == json.loads(json.dumps(own), parse_int=float), seed
        if "job" in own:
            json.loads(plan_as_json(own["job"]), parse_constant=no_number, parse_float=finite)
            job_sheet_text(own["job"]).encode()

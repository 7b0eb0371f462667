"""The server's own pages: a second opinion on a job file at a desk, and errors in plain words."""

from threading import Lock
from urllib.parse import urlsplit

from flask import Blueprint, Flask, Response, render_template, request
from flask_wtf import FlaskForm
from flask_wtf.csrf import CSRFError
from flask_wtf.file import FileField, FileRequired
from werkzeug.exceptions import BadRequest, HTTPException, RequestEntityTooLarge
from wtforms import RadioField

from webapp.baker.assets import LATER_STYLES, STYLES
from webapp.baker.writer import Site
from webapp.errors import JobFileError
from webapp.job.file import LARGEST, read_job
from webapp.sheet.report import job_sheet_text, plan_as_json
from webapp.terminal import visible, visible_in

pages = Blueprint("pages", __name__)
# Side by side plans take as long as one after another, and leave no time to those who ask for files.
one_plan = Lock()

OLD_PAGE = "This page has been open for too long, or cookies are off. Choose the file again and send it."
TOO_LARGE = (
    f"This file is larger than {LARGEST // 1_000_000} MB, and a job file is far smaller. Choose another."
)
ERRORS = {
    400: "The server could not read this request. Go back and try again.",
    404: "There is no such page here.",
    405: "This address only answers with a page. Go back and use the form.",
    500: "Something went wrong on the server. Nothing on your phone is lost.",
}


class PlanForm(FlaskForm):
    """A job file and what to make of it."""

    job_file = FileField(
        "Job file", [FileRequired("Choose a job file, as the menu of the job sheet saves it.")]
    )
    answer = RadioField(
        "Answer with",
        choices={"text": "the job sheet as text", "json": "all figures as JSON"},
        default="text",
    )


def init_app(app: Flask, site: Site) -> None:
    """Attach the pages, their errors, and what every page needs to know of the site."""
    app.register_blueprint(pages)
    app.register_error_handler(HTTPException, say_error)
    app.register_error_handler(CSRFError, lambda _: (_refused(OLD_PAGE), 400))
    app.register_error_handler(RequestEntityTooLarge, lambda _: (_refused(TOO_LARGE), 413))
    app.before_request(refuse_unreadable)
    app.after_request(keep_nowhere)
    styles = [f"/v-{site.version}/{name}" for name in (STYLES, LATER_STYLES)]
    app.context_processor(lambda: {"styles": styles})


def refuse_unreadable() -> None:
    """Refuse what the guard of forms would stumble over: a part without a name, an address that is none."""
    is_form = request.method == "POST" and request.endpoint is not None
    if is_form and (None in request.form or not _is_address(request.referrer or "")):
        raise BadRequest


def keep_nowhere(response: Response) -> Response:
    """Leave nothing of a server page in any cache: it carries a token and somebody's job."""
    response.headers["Cache-Control"] = "no-store"
    return response


@pages.route("/plan", methods=["GET", "POST"])
def plan_page() -> str | Response:
    """Show the form, and below it the job sheet of the file that was sent."""
    form = PlanForm()
    if not form.validate_on_submit():
        return _plan_page(form)
    is_text = form.answer.data != "json"
    try:
        with one_plan:
            job = read_job(form.job_file.data.read(LARGEST + 1))
            said = job_sheet_text(visible_in(job)) if is_text else plan_as_json(job)
    except JobFileError as error:
        return _plan_page(form, problem=visible(str(error)))
    if is_text:
        return _plan_page(form, text=said)
    headers = {"Content-Disposition": 'attachment; filename="plan.json"'}
    return Response(said, mimetype="application/json", headers=headers)


def _is_address(text: str) -> bool:
    try:
        return (urlsplit(text).port or 0) >= 0
    except ValueError:
        return False


def _plan_page(form: PlanForm, *, problem: str = "", text: str = "") -> str:
    problems = [problem] if problem else list(form.job_file.errors)
    return render_template("plan.html", form=form, problems=problems, text=text)


def _refused(problem: str) -> str:
    return _plan_page(PlanForm(formdata=None), problem=problem)


def say_error(error: HTTPException) -> tuple[str, int]:
    """Answer an error with a page that says what to do."""
    code = error.code or 500
    return render_template("error.html", says=ERRORS.get(code, ERRORS[400 if code < 500 else 500])), code

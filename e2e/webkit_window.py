"""A window of Debian's WebKit as large as a phone, for the driver to open: PROFILE WIDTH HEIGHT [dark].

Debian's own browser for tests forgets everything when it ends; this one keeps its profile, as a phone does.
It runs in the system's Python, which has the bindings. A SIGUSR1 prints the page to PROFILE/page.pdf.
"""

import os
import signal
import sys
from pathlib import Path

# What the driver asks for by name.
NAME, VERSION = "MiniBrowser", (2, 40, 0)


def main(folder: str, width: str, height: str, scheme: str = "light") -> None:
    """Open the window, and keep in the profile the number of its process, its console and its downloads."""
    import gi

    gi.require_version("Gtk", "3.0")
    gi.require_version("WebKit2", "4.1")
    from gi.repository import GLib, Gtk, WebKit2

    profile = Path(folder)
    # The helpers of this browser are ended together with it.
    os.setpgid(0, 0)
    os.dup2(os.open(profile / "console.txt", os.O_WRONLY | os.O_APPEND | os.O_CREAT), 1)
    Gtk.init()
    Gtk.Settings.get_default().set_property("gtk-application-prefer-dark-theme", scheme == "dark")
    context = WebKit2.WebContext.new_with_website_data_manager(
        WebKit2.WebsiteDataManager(
            base_data_directory=str(profile / "data"), base_cache_directory=str(profile / "cache")
        )
    )
    settings = WebKit2.Settings(enable_write_console_messages_to_stdout=True)
    view = WebKit2.WebView(web_context=context, settings=settings, is_controlled_by_automation=True)
    window = Gtk.Window(decorated=False, default_width=int(width), default_height=int(height))
    window.add(view)
    window.show_all()

    def started(_context: object, session: WebKit2.AutomationSession) -> None:
        about = WebKit2.ApplicationInfo()
        about.set_name(NAME)
        about.set_version(*VERSION)
        session.set_application_info(about)
        session.connect("create-web-view", lambda _session: view)

    def downloads(_context: object, download: WebKit2.Download) -> None:
        def keep(_download: object, name: str) -> bool:
            download.set_destination((profile / name).as_uri())
            return True

        download.connect("decide-destination", keep)

    def prints() -> bool:
        paper = Gtk.PrintSettings()
        paper.set_printer("Print to File")
        paper.set("output-uri", (profile / "printing.pdf").as_uri())
        paper.set("output-file-format", "pdf")
        page = WebKit2.PrintOperation.new(view)
        page.set_print_settings(paper)
        page.connect("finished", lambda _page: (profile / "printing.pdf").rename(profile / "page.pdf"))
        page.print_()
        return True

    GLib.unix_signal_add(GLib.PRIORITY_DEFAULT, signal.SIGUSR1, prints)
    context.connect("automation-started", started)
    context.connect("download-started", downloads)
    context.set_automation_allowed(True)
    (profile / "process.txt").write_text(str(os.getpid()))
    Gtk.main()


if __name__ == "__main__":
    main(*sys.argv[1:])

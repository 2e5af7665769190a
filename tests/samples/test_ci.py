"""What `samples/ci` and the pre-commit hooks hold: each run, or held against its published schema where it cannot be.

The schemas of GitHub workflows and actions and of GitLab's file are those that the package check-jsonschema ships.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
import yaml

ROOT = Path(__file__).parents[2]
CI = ROOT / "samples" / "ci"
BIN = Path(sys.executable).parent

JOB = """\
job small "Small"
  date  2026-11-25

room 1 "Store"
  height   2400
  on       plasterboard
  surface  sound
  keep     skirting 100
  wall a   3000
"""


@pytest.fixture
def firm(tmp_path: Path) -> Path:
    """A repository of one job that checks clean and is formatted."""
    root = tmp_path / "firm"
    root.mkdir()
    (root / "job.room").write_text(JOB, encoding="utf-8")
    ran("roomspec", "format", ".", cwd=root)
    commit(root)
    return root


def ran(*command: str | Path, cwd: Path, **more: str) -> subprocess.CompletedProcess[str]:
    """Run a command with the tested roomspec on the path, as a CI server does: no colours, nothing to type."""
    kept = {
        name: os.environ[name] for name in ("HOME", "LANG", "PIP_INDEX_URL", "PIP_CONFIG_FILE") if name in os.environ
    }
    env = kept | {"PATH": f"{BIN}{os.pathsep}{os.environ['PATH']}"} | more
    return subprocess.run(list(map(str, command)), cwd=cwd, env=env, capture_output=True, text=True, check=False)


def commit(root: Path) -> str:
    """Make the folder a git repository with one commit; its name."""
    who = ("-c", "user.name=Test", "-c", "user.email=test@example.org", "-c", "commit.gpgsign=false")
    for command in (("init", "-q", "-b", "main"), ("add", "-A"), (*who, "commit", "-q", "-m", "All")):
        done = ran("git", *command, cwd=root)
        assert done.returncode == 0, done.stderr
    return ran("git", "rev-parse", "HEAD", cwd=root).stdout.strip()


@pytest.mark.parametrize(
    ("kind", "file"), [("manifest", ROOT / ".pre-commit-hooks.yaml"), ("config", CI / "pre-commit-config.yaml")]
)
def test_pre_commit_reads_its_files(kind, file):
    """pre-commit's own validation accepts the hooks and the example of a configuration."""
    done = ran(sys.executable, "-m", "pre_commit", f"validate-{kind}", file, cwd=ROOT)
    assert (done.returncode, done.stdout) == (0, "")


@pytest.mark.parametrize(
    ("schema", "file"),
    [
        ("vendor.github-workflows", "github-workflow.yml"),
        ("vendor.github-actions", "github-action/action.yml"),
        ("vendor.gitlab-ci", "gitlab.yml"),
    ],
)
def test_each_template_is_valid_by_its_schema(schema, file):
    """The published schema of each server accepts its template."""
    done = ran(sys.executable, "-m", "check_jsonschema", "--builtin-schema", schema, CI / file, cwd=ROOT)
    assert done.returncode == 0, done.stdout


def test_pre_commit_runs_the_hooks(firm, tmp_path):
    """pre-commit itself, in a repository: it installs this checkout by pip, formats a file, and stops a mistake."""
    tool = tmp_path / "tool"
    tool.mkdir()
    for name in ("pyproject.toml", "README.md", ".pre-commit-hooks.yaml"):
        shutil.copy(ROOT / name, tool / name)
    for name in ("roomspec", "lsp", "grammar"):
        shutil.copytree(ROOT / name, tool / name, ignore=shutil.ignore_patterns("__pycache__"))
    config = yaml.safe_load((CI / "pre-commit-config.yaml").read_text(encoding="utf-8"))
    config["repos"][0] |= {"repo": str(tool), "rev": commit(tool)}
    (firm / ".pre-commit-config.yaml").write_text(yaml.safe_dump(config), encoding="utf-8")
    commit(firm)

    def hooks() -> subprocess.CompletedProcess[str]:
        ran("git", "add", "-A", cwd=firm)
        places = {"PRE_COMMIT_HOME": str(tmp_path / "kept"), "PIP_CONSTRAINT": str(ROOT / ".ci" / "constraints.txt")}
        return ran(sys.executable, "-m", "pre_commit", "run", "--all-files", "--color", "never", cwd=firm, **places)

    clean = hooks()
    assert clean.returncode == 0, clean.stdout + clean.stderr
    job = firm / "job.room"
    formatted = job.read_text(encoding="utf-8")
    job.write_text(formatted.replace("  height", "      height"), encoding="utf-8")
    assert "files were modified by this hook" in hooks().stdout
    assert job.read_text(encoding="utf-8") == formatted
    job.write_text(formatted.replace("skirting", "skirtin"), encoding="utf-8")
    stopped = hooks()
    assert stopped.returncode == 1
    assert "job.room:" in stopped.stdout and "unreadable-line" in stopped.stdout
    assert not ran("git", "status", "--short", "--untracked-files", cwd=firm).stdout.count("roomspec-cache")


def test_the_shell_example_runs(firm):
    """Exit 0 and two reports for a clean repository, 1 for a file that is not formatted and for a finding."""
    script = CI / "check.sh"
    assert ran("sh", "-n", script, cwd=firm).returncode == 0
    done = ran(script, cwd=firm)
    assert done.returncode == 0, done.stdout + done.stderr
    assert {path.name for path in (firm / "reports").iterdir()} == {"roomspec.sarif", "roomspec.xml"}
    job = firm / "job.room"
    text = job.read_text(encoding="utf-8")
    job.write_text(text.replace("  height", "      height"), encoding="utf-8")
    assert ran(script, cwd=firm).returncode == 1
    job.write_text(text.replace("skirting", "skirtin"), encoding="utf-8")
    assert ran(script, cwd=firm).returncode == 1


def test_the_shell_example_says_what_it_needs(firm, tmp_path):
    """Without roomspec, and without being told where it is, one line says so."""
    done = ran("/bin/sh", CI / "check.sh", cwd=firm, PATH=str(tmp_path))
    assert done.returncode == 2
    assert "say what pip is to install" in done.stderr


def test_the_commands_of_the_templates_run(firm, tmp_path):
    """What GitLab and GitHub would run is run here, with roomspec installed where the action puts it."""
    gitlab = yaml.safe_load((CI / "gitlab.yml").read_text(encoding="utf-8"))["roomspec"]
    for command in gitlab["script"]:
        assert ran("sh", "-c", command, cwd=firm).returncode == 0
    assert all((firm / name).exists() for name in gitlab["artifacts"]["reports"].values())
    action = yaml.safe_load((CI / "github-action" / "action.yml").read_text(encoding="utf-8"))
    (tmp_path / "roomspec" / "bin").mkdir(parents=True)
    (tmp_path / "roomspec" / "bin" / "roomspec").symlink_to(BIN / "roomspec")
    run = {"RUNNER_TEMP": str(tmp_path), "CHECKED": ".", "FAIL_ON": "error"}
    assert ran("bash", "-e", "-c", action["runs"]["steps"][-1]["run"], cwd=firm, **run).returncode == 0
    assert (firm / action["outputs"]["sarif"]["value"]).exists()
    (firm / "job.room").write_text(JOB.replace("skirting", "skirtin"), encoding="utf-8")
    failed = ran("bash", "-e", "-c", action["runs"]["steps"][-1]["run"], cwd=firm, **run)
    assert failed.returncode == 1
    assert failed.stdout.startswith("::error file=job.room,line=")

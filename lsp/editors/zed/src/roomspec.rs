//! Starts `roomspec serve` for the room files of a folder.

use zed_extension_api as zed;

struct Roomspec;

impl zed::Extension for Roomspec {
    fn new() -> Self {
        Roomspec
    }

    fn language_server_command(
        &mut self,
        _server: &zed::LanguageServerId,
        worktree: &zed::Worktree,
    ) -> zed::Result<zed::Command> {
        let command = worktree
            .which("roomspec")
            .ok_or("the command `roomspec` is not on the PATH")?;
        Ok(zed::Command {
            command,
            args: vec!["serve".to_string()],
            env: worktree.shell_env(),
        })
    }
}

zed::register_extension!(Roomspec);

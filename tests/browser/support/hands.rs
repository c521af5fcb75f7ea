//! What a person does on the page: press words, choose words, fill fields, read.

use serde_json::{Value, json};

use super::browser::Browser;

/// Finds what is shown and begins with these words.
const SHOWN: &str =
    "const shown = (element) => element.checkVisibility?.() ?? element.offsetParent !== null;
    const begins = (selector, words) => [...document.querySelectorAll(selector)]
      .find((element) => shown(element) && element.textContent.trim().startsWith(words));";

impl Browser {
    async fn on_the_page(&self, script: &str, arguments: Vec<Value>) -> anyhow::Result<Value> {
        Ok(self
            .execute(&format!("{SHOWN} {script}"), arguments)
            .await?)
    }

    /// Presses the button or link that begins with these words.
    pub(crate) async fn press(&self, words: &str) -> anyhow::Result<()> {
        let script = format!(
            "{SHOWN} return Boolean(begins('button:enabled, a[href]', {}))",
            json!(words)
        );
        self.until(&script).await?;
        self.on_the_page(
            "begins('button:enabled, a[href]', arguments[0]).click()",
            vec![json!(words)],
        )
        .await?;
        Ok(())
    }

    /// Chooses the way that begins with these words in the open slip.
    pub(crate) async fn choose(&self, words: &str) -> anyhow::Result<()> {
        let script = format!(
            "{SHOWN} return Boolean(begins('dialog[open] label', {}))",
            json!(words)
        );
        self.until(&script).await?;
        self.on_the_page(
            "begins('dialog[open] label', arguments[0]).click()",
            vec![json!(words)],
        )
        .await?;
        Ok(())
    }

    /// Fills the field with this label and leaves it.
    pub(crate) async fn fill(&self, label: &str, text: &str) -> anyhow::Result<()> {
        let filled = self
            .on_the_page(
                "const label = [...document.querySelectorAll('label')]
                   .find((element) => element.textContent.trim().startsWith(arguments[0]));
                 const field = document.getElementById(label?.htmlFor);
                 if (!field) return false;
                 field.value = arguments[1];
                 field.dispatchEvent(new Event('input', { bubbles: true }));
                 field.dispatchEvent(new Event('change', { bubbles: true }));
                 return true;",
                vec![json!(label), json!(text)],
            )
            .await?;
        anyhow::ensure!(filled == json!(true), "there is no field called {label}");
        Ok(())
    }

    /// Waits until these words stand on the page.
    pub(crate) async fn sees(&self, words: &str) -> anyhow::Result<()> {
        self.until(&format!(
            "return document.body.innerText.includes({})",
            json!(words)
        ))
        .await
    }

    /// Waits until the page says that everything is saved.
    pub(crate) async fn saved(&self) -> anyhow::Result<()> {
        self.until("return document.querySelector('[data-saved]')?.textContent === 'Saved'")
            .await
    }

    /// Waits until a ready window is written out beside its picture.
    pub(crate) async fn sees_a_ready_window(&self) -> anyhow::Result<()> {
        self.until(
            "return /\\d+ in 20/.test(document.body.innerText)
               && Boolean(document.querySelector('.plate [role=img][aria-label*=likely]'))",
        )
        .await
    }
}

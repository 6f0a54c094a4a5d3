//! Findings for a person at a terminal.

use std::io::{self, Write};

use crate::diagnostic::{Diagnostic, Remedy};
use crate::report::lines::place_of;
use crate::report::snippet::Files;
use crate::report::{Checked, Palette, printable};

/// So many findings are shown with their lines; the rest take one line each.
const MOST_SNIPPETS: usize = 100;

/// A report in the making: over all specs of one run, the first findings are shown whole.
#[derive(Debug)]
pub struct TextReport {
    palette: Palette,
    snippets_left: usize,
}

impl TextReport {
    /// An empty report.
    pub fn new(palette: Palette) -> Self {
        Self { palette, snippets_left: MOST_SNIPPETS }
    }

    /// Writes every finding of one spec.
    ///
    /// # Errors
    /// What the stream says.
    pub fn write(&mut self, checked: &Checked<'_>, out: &mut impl Write) -> io::Result<()> {
        let mut files = Files::of(checked);
        for finding in checked.findings {
            let snippet = if self.snippets_left > 0 { files.snippet(finding, self.palette)? } else { None };
            match snippet {
                Some(snippet) => {
                    self.snippets_left -= 1;
                    writeln!(out, "{}", self.heading(finding))?;
                    write!(out, "{snippet}")?;
                    self.write_details(checked, finding, out)?;
                    writeln!(out)?;
                }
                None => {
                    writeln!(out, "{}: {}", place_of(checked, finding.span), self.heading(finding))?;
                    self.write_consequences(checked, finding, out)?;
                }
            }
        }
        Ok(())
    }

    fn heading(&self, finding: &Diagnostic) -> String {
        let severity = self.palette.severity(finding.severity, finding.severity.word());
        let rule = self.palette.faint(&format!("[{}]", finding.rule));
        format!("{severity}: {} {rule}", printable(&finding.message))
    }

    fn write_details(
        &self,
        checked: &Checked<'_>,
        finding: &Diagnostic,
        out: &mut impl Write,
    ) -> io::Result<()> {
        for note in &finding.notes {
            self.write_detail("note", &printable(note), out)?;
        }
        for help in &finding.help {
            self.write_detail("cure", &printable(help), out)?;
        }
        let is_about_element = !finding.standing.is_empty();
        if is_about_element && (!finding.help.is_empty() || finding.remedy != Remedy::OnPaper) {
            let state = format!("{}: {}", printable(&finding.standing), finding.remedy.sentence());
            self.write_detail("state", &state, out)?;
        }
        self.write_consequences(checked, finding, out)?;
        if let Some(basis) = &finding.basis {
            self.write_detail("basis", &printable(basis), out)?;
        }
        if let Some(waiver) = &finding.waiver {
            self.write_detail("or", &self.palette.faint(&printable(waiver)), out)?;
        }
        Ok(())
    }

    fn write_consequences(
        &self,
        checked: &Checked<'_>,
        finding: &Diagnostic,
        out: &mut impl Write,
    ) -> io::Result<()> {
        for consequence in finding.consequences.iter().flat_map(Diagnostic::with_consequences) {
            let place = format!("({}, {})", consequence.rule, place_of(checked, consequence.span));
            let severity = self.palette.severity(consequence.severity, consequence.severity.word());
            let text =
                format!("{severity}: {} {}", printable(&consequence.message), self.palette.faint(&place));
            self.write_detail("then", &text, out)?;
        }
        Ok(())
    }

    /// A word in front, the rest of a text of several lines below its first.
    fn write_detail(&self, word: &str, text: &str, out: &mut impl Write) -> io::Result<()> {
        let mut word = self.palette.strong(&format!("{word:<5}"));
        for line in text.lines() {
            writeln!(out, "     {word}  {line}")?;
            word = " ".repeat(5);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diagnostic::{Related, Severity};
    use crate::text::{FileId, Source, Span};

    fn finding(start: usize, end: usize) -> Diagnostic {
        Diagnostic {
            rule: "lengths-disagree",
            severity: Severity::Warning,
            subject: "wall W1".to_owned(),
            span: Span::new(FileId(0), u32::try_from(start).unwrap(), u32::try_from(end).unwrap()),
            message: "wall W1 is 9\" thick; its footing is laid out for 8\"".to_owned(),
            related: Vec::new(),
            notes: Vec::new(),
            help: Vec::new(),
            standing: "wall W1".to_owned(),
            remedy: Remedy::OnPaper,
            basis: None,
            fix: None,
            waiver: None,
            choices: Vec::new(),
            consequences: Vec::new(),
        }
    }

    fn report_of(text: &str, findings: &[Diagnostic], palette: Palette) -> String {
        let names = ["house.framing".to_owned()];
        let sources = [Source::new("house.framing", text)];
        let checked =
            Checked { sources: &sources, names: &names, is_alone: false, findings, waived: &[], n_known: 0 };
        let mut out = Vec::new();
        TextReport::new(palette).write(&checked, &mut out).unwrap();
        String::from_utf8(out).unwrap()
    }

    #[test]
    fn a_finding_says_what_where_why_and_what_to_do() {
        let text = "wall W1\n  thick  9\"\nfooting F1\n  under  W1\n";
        let mut root = finding(10, 19);
        root.related
            .push(Related { span: Span::new(FileId(0), 33, 42), message: "laid out here".to_owned() });
        root.notes.push("two lines\nof note".to_owned());
        root.help.push("write `thick 8\"`".to_owned());
        root.remedy = Remedy::InPlace;
        root.basis = Some("common practice".to_owned());
        root.waiver = Some("waive lengths-disagree because \"…\"".to_owned());
        root.consequences.push(finding(20, 30));
        assert_eq!(
            report_of(text, &[root], Palette::Plain),
            r#"warning: wall W1 is 9" thick; its footing is laid out for 8" [lengths-disagree]
   ╭─[ house.framing:2:3 ]
   │
 2 │   thick  9"
   │   ────┬────
   │       ╰────── wall W1
   │
 4 │   under  W1
   │   ────┬────
   │       ╰────── laid out here
───╯
     note   two lines
            of note
     cure   write `thick 8"`
     state  wall W1: already in place
     then   warning: wall W1 is 9" thick; its footing is laid out for 8" (lengths-disagree, house.framing:3:1)
     basis  common practice
     or     waive lengths-disagree because "…"

"#
        );
    }

    #[test]
    fn any_place_in_any_text_is_shown_without_escape_codes() {
        let texts = ["", "\n", "é", "a\r\u{1b}[2J\r\nlong-é½\u{2028}x", "\u{feff}\t\u{85}\u{b}"];
        for text in texts {
            for start in 0..=text.len() + 1 {
                for end in start..=text.len() + 1 {
                    let report = report_of(text, &[finding(start, end)], Palette::Plain);
                    assert!(report.contains("wall W1"), "{text:?} {start}..{end}");
                    assert!(!report.contains('\u{1b}'), "{report}");
                    assert!(report.lines().all(|line| line == line.trim_end()), "{report}");
                }
            }
        }
    }

    #[test]
    fn a_very_long_line_and_the_hundred_first_finding_take_one_line() {
        let long = format!("-- {}\n", "x".repeat(10_000));
        assert_eq!(report_of(&long, &[finding(9, 10)], Palette::Plain).lines().count(), 1);
        let many = vec![finding(0, 4); MOST_SNIPPETS + 2];
        let report = report_of("wall W1\n", &many, Palette::Plain);
        let short = report.lines().filter(|line| line.starts_with("house.framing:1:1: warning: "));
        assert_eq!(short.count(), 2);
    }
}

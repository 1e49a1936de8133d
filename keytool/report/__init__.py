"""A page for the grower: one sample in plain words, as PDF."""

from keytool.report.pdf import PAPERS, report_pdf

__all__ = ["PAPERS", "report_pdf"]

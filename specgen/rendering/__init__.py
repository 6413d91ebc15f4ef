"""From a finished view to the files a customer holds: HTML, PDF, and the writing of them.

Called by the commands and by issuing. Importing this package loads no typesetter and no template engine; each module
is imported by its own name: `environment.fill`, `pdf.write_pdf`, `html.write_html`, `writing.write_all`.
"""

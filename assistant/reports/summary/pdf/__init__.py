"""A summary laid out on A4. Needs the PDF library, so it is imported only where a PDF is asked for."""

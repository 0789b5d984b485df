"""An import contract of our own: which packages from outside a room may use.

A list of what is allowed bites on every new dependency, where a list of what is
forbidden would have to know it beforehand.
"""

import sys

from grimp import ImportGraph
from importlinter import Contract, ContractCheck, fields, output


class ExternalPackagesContract(Contract):
    """Direct imports of ``source_modules`` from outside the project are all in ``allowed``.

    Configuration options:
        - source_modules: packages or modules; packages count with everything in them.
        - allowed:        top-level names of packages; the standard library is always allowed.
    """

    type_name = "external_packages"

    source_modules = fields.ListField(subfield=fields.ModuleField())
    allowed = fields.SetField(subfield=fields.StringField(), required=False, default=frozenset())

    def check(self, graph: ImportGraph, verbose: bool) -> ContractCheck:
        roots = set(self.session_options["root_packages"])
        found = []
        for room in self.source_modules:
            descendants = graph.find_descendants(room.name)
            for importer in sorted({room.name} | descendants):
                for imported in sorted(graph.find_modules_directly_imported_by(importer)):
                    package = imported.split(".")[0]
                    if package in roots or package in sys.stdlib_module_names:
                        continue
                    if package not in self.allowed:
                        found.append((importer, package))
        return ContractCheck(kept=not found, metadata={"found": found})

    def render_broken_contract(self, check: ContractCheck) -> None:
        for importer, package in check.metadata["found"]:
            output.print_error(f"{importer} is not allowed to import {package}.", bold=False)
            output.new_line()

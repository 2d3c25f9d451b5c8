"""What a person declares: a job, read with every fault told at once, compiled for the engine."""

from lightoff.job.adding import with_readings
from lightoff.job.faults import Fault, JobError
from lightoff.job.files import load, load_readings
from lightoff.job.job import Job
from lightoff.job.parse import parse_tree
from lightoff.job.readings_csv import readings_from_csv
from lightoff.job.schema import schema
from lightoff.job.text import loads
from lightoff.job.toml_writer import tree_to_toml

__all__ = [
    "Fault",
    "Job",
    "JobError",
    "load",
    "load_readings",
    "loads",
    "parse_tree",
    "readings_from_csv",
    "schema",
    "tree_to_toml",
    "with_readings",
]

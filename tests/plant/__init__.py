"""An independent machine: a simulated unit with other equations, from which jobs are drawn."""

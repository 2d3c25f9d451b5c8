"""The algebra of a fit on numpy arrays, where numpy is there; vectors stay lists of floats."""

from collections.abc import Sequence

from lightoff.inference.algebra import Groups, Matrix, Vector


class Arrays:
    """On numpy arrays; raises `ImportError` where there is no numpy."""

    def __init__(self) -> None:
        import numpy

        self.np = numpy

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        return self.np.array(rows, dtype=float)

    def covariance(
        self, common: Matrix, own: Matrix, groups: Groups, variances: Vector, /
    ) -> Matrix:
        found = common @ common.T + self.np.diag(variances)
        for group in groups:
            found[group, group] += own[group] @ own[group].T
        return found

    def cholesky(self, matrix: Matrix) -> Matrix:
        return self.np.linalg.cholesky(matrix)

    def forward(self, triangle: Matrix, vectors: Sequence[Vector]) -> Sequence[Vector]:
        found = self.np.linalg.solve(triangle, self.np.array(vectors, dtype=float).T).T
        return list(found.tolist())

    def backward(self, triangle: Matrix, vector: Vector) -> Vector:
        return self.np.linalg.solve(triangle.T, vector).tolist()

    def times(self, rows: Matrix, vector: Vector) -> Vector:
        return (rows @ self.np.array(vector)).tolist()

    def across(self, rows: Matrix, vector: Vector) -> Vector:
        return (rows.T @ self.np.array(vector)).tolist()

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// The assignment of columns to fields with the largest total, each to one at most. Exact: shortest augmenting paths
/// with potentials (Kuhn 1955; Jonker and Volgenant 1987).
/// </summary>
internal static class Assignment
{
    /// <summary>For each row its column, or -1. Only gains above 0 are taken.</summary>
    /// <param name="gain">Gain of each pair, by row and column.</param>
    public static int[] Best(double[,] gain)
    {
        // Each row may also go to a place of its own, which gains nothing.
        int rows = gain.GetLength(0);
        int columns = gain.GetLength(1);
        int all = columns + rows;
        double Cost(int row, int column) => column < columns ? -Math.Max(gain[row, column], 0) : 0;
        var rowPrice = new double[rows + 1];
        var columnPrice = new double[all + 1];
        var rowOf = new int[all + 1];
        var from = new int[all + 1];
        for (int row = 1; row <= rows; row++)
        {
            rowOf[0] = row;
            int at = 0;
            var least = Enumerable.Repeat(double.MaxValue, all + 1).ToArray();
            var done = new bool[all + 1];
            do
            {
                done[at] = true;
                int current = rowOf[at], next = 0;
                double step = double.MaxValue;
                for (int column = 1; column <= all; column++)
                {
                    if (done[column])
                    {
                        continue;
                    }

                    double cost = Cost(current - 1, column - 1) - rowPrice[current] - columnPrice[column];
                    if (cost < least[column])
                    {
                        (least[column], from[column]) = (cost, at);
                    }

                    if (least[column] < step)
                    {
                        (step, next) = (least[column], column);
                    }
                }

                for (int column = 0; column <= all; column++)
                {
                    if (done[column])
                    {
                        rowPrice[rowOf[column]] += step;
                        columnPrice[column] -= step;
                    }
                    else
                    {
                        least[column] -= step;
                    }
                }

                at = next;
            }
            while (rowOf[at] != 0);
            while (at != 0)
            {
                rowOf[at] = rowOf[from[at]];
                at = from[at];
            }
        }

        var result = Enumerable.Repeat(-1, rows).ToArray();
        for (int column = 1; column <= columns; column++)
        {
            if (rowOf[column] > 0 && gain[rowOf[column] - 1, column - 1] > 0)
            {
                result[rowOf[column] - 1] = column - 1;
            }
        }

        return result;
    }
}

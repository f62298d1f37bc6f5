-- One row per van line with a number its label does not have.
select van, part_raw, part_number from van_counts where (part_number is null) <> (fitted_number is null)

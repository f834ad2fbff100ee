//! Rows of text that want to stand at certain heights, moved apart as little as possible.

/// The heights nearest to the wanted ones, in the sense of least squares, at which rows stand at least `apart` from
/// one another. `wanted` rises.
pub(crate) fn spread(wanted: &[f64], apart: f64) -> Vec<f64> {
    // Rows that would touch form a block about the mean of what they want; blocks that touch melt into one.
    let mut blocks: Vec<(f64, usize)> = Vec::with_capacity(wanted.len());
    for (row, at) in wanted.iter().enumerate() {
        let mut block = (at - row as f64 * apart, 1);
        while let Some((above, count)) = blocks.last().copied().filter(|(above, _)| *above > block.0) {
            let both = count + block.1;
            block = ((above * count as f64 + block.0 * block.1 as f64) / both as f64, both);
            blocks.pop();
        }
        blocks.push(block);
    }
    let starts = blocks.into_iter().flat_map(|(start, count)| std::iter::repeat_n(start, count));
    starts.enumerate().map(|(row, start)| start + row as f64 * apart).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_with_room_where_they_want_to_be() {
        assert_eq!(spread(&[0.0, 20.0, 31.0], 1.0), [0.0, 20.0, 31.0]);
    }

    #[test]
    fn two_crowded_rows_moved_alike() {
        assert_eq!(spread(&[10.0, 10.4, 30.0], 1.0), [9.7, 10.7, 30.0]);
    }

    #[test]
    fn a_crowd_about_its_middle() {
        assert_eq!(spread(&[5.0, 5.0, 5.0, 5.5], 1.0), [3.625, 4.625, 5.625, 6.625]);
    }
}

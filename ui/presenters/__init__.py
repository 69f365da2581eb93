"""From a result to plot-ready arrays and lines of text, without Qt."""

"""How far judges agree: kappa, Kendall's W, intraclass correlation and Krippendorff's alpha, each with its interval."""

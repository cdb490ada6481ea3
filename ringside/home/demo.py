FACES = ("judge", "secretary", "exhibitor")
